"""A lot that came out beside its standard: correct it, overdye it, or dye it anew.

``off_shade`` says where a lot stands and where it should be, ``correcting`` what to
add, ``sisters`` which deeper colourways it could become, ``keeping`` plans the bath
that it goes into, ``restock`` finds an old lot again and says what to dye now.
"""
