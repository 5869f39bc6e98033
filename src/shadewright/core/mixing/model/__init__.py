"""One dye on one yarn: K/S, its shape over the wavelengths, its growth with depth.

1. ``kubelka_munk``  from K/S to reflectance and back, and the surface
2. ``shapes``        what spectra look like before one is measured
3. ``parameters``    what is to be learned, and how large each part is thought to be
4. ``entries``       a dye's log unit-K/S at a depth
5. ``seeing``        from a reflectance to Lab, or to the spectrum as read
6. ``forward``       all of it, and how each parameter moves what is seen
"""
