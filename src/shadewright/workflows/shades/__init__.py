"""Shades: from a swatch that was read to a recipe that will come out right.

``kinds``     how a colour was come by, and what that is worth
``meters``    the light and the eye that a meter reckons for
``readings``  a colour that was read: typed, averaged, kept
``swatches``  what was dyed, read and said of it
``evidence``  which of them teach, as core takes them
``palettes``  the fit that holds
``fits``      fit anew, and keep what came out
"""
