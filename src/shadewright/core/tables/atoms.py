"""Standard atomic weights of the elements that dye-bath chemicals are made of.

Source: [ciaaw2021]_, the abridged values to five figures. Hydrogen, carbon,
nitrogen, oxygen and sulphur vary a little between natural materials; IUPAC
gives an interval for each, and the abridged value lies inside it.
"""

HYDROGEN_G_PER_MOL = 1.0080
CARBON_G_PER_MOL = 12.011
NITROGEN_G_PER_MOL = 14.007
OXYGEN_G_PER_MOL = 15.999
SODIUM_G_PER_MOL = 22.990
SULPHUR_G_PER_MOL = 32.06
CALCIUM_G_PER_MOL = 40.078

WATER_G_PER_MOL = 2 * HYDROGEN_G_PER_MOL + OXYGEN_G_PER_MOL
SULPHATE_G_PER_MOL = SULPHUR_G_PER_MOL + 4 * OXYGEN_G_PER_MOL
