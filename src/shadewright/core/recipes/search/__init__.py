"""The search: every set of up to four dyes, thousands of sets side by side.

1. ``terms``       the parts of CIEDE2000, hues as directions
2. ``residuals``   CIEDE2000 as residuals, with their slopes
3. ``problem``     the target under lights on a base; dyes in proportion
4. ``plain``       the objective of one recipe, as the equations are printed
5. ``evaluating``  the same for thousands at once: the fast kernel
6. ``cholesky``    thousands of small systems of equations
7. ``stepping``    one step downhill within the limits
8. ``descending``  down to the bottom, those that have arrived leaving
9. ``sets``        all sets and where their parts stand
10. ``starting``   where one, two and three dyes begin
11. ``forecasting`` what a fourth dye would gain
12. ``parts``      where a larger set begins
13. ``widening``   from one dye to four

Plain numpy on one thread. The work of one call is a few microseconds, and threads would
spend them waiting for each other.
"""
