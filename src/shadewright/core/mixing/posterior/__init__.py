"""Every swatch at once: what the parameters are, and how sure.

1. ``weighing``     residuals and slopes in units of each swatch's own noise
2. ``solving``      the linear algebra of many dyes
3. ``known``        parameters with their covariance
4. ``fitting``      Gauss and Newton, and the sizes learned from the dyes
5. ``calibrating``  each swatch foretold by all the others
6. ``predicting``   the colour of a mix with its covariance
"""
