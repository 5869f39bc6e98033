"""What a pound, a pint and a spoon hold, in grams and millilitres.

All values are exact by definition, save those marked ``by custom``.

Sources
-------
- Pound and its parts: the international yard and pound agreement of 1959, as
  printed in NIST SP 811 [thompson2008]_, appendix B.
- US liquid measures: one US gallon is 231 cubic inches, the inch 25.4 mm;
  NIST SP 811, appendix B (from memory).
- UK liquid measures: one imperial gallon is 4.54609 l; the UK Units of
  Measurement Regulations 1995 [ukunits1995]_, schedule (from memory).
- Metric spoons and cups: by custom, not by law. In the USA only food labels
  fix them (21 CFR 101.9(b)(5)(viii): 5, 15 and 240 ml).
"""

GRAMS_PER_POUND = 453.59237
GRAMS_PER_OUNCE = 28.349523125  # a sixteenth of a pound
GRAMS_PER_GRAIN = 0.06479891  # a seven-thousandth of a pound

ML_PER_US_GALLON = 3785.411784
ML_PER_US_QUART = 946.352946
ML_PER_US_PINT = 473.176473
ML_PER_US_CUP = 236.5882365
ML_PER_US_FLUID_OUNCE = 29.5735295625
ML_PER_US_TABLESPOON = 14.78676478125
ML_PER_US_TEASPOON = 4.92892159375

ML_PER_UK_GALLON = 4546.09
ML_PER_UK_QUART = 1136.5225
ML_PER_UK_PINT = 568.26125
ML_PER_UK_FLUID_OUNCE = 28.4130625
ML_PER_UK_CUP = 284.130625  # by custom: half an imperial pint

ML_PER_METRIC_CUP = 250.0  # by custom
ML_PER_METRIC_TABLESPOON = 15.0  # by custom; in Australia 20
ML_PER_METRIC_TEASPOON = 5.0  # by custom
