"""The catalogue: dyes, bases, acids and helpers, pots, measuring tools.

Plain lists and edit forms, so this one room of the pages may import records.
Everything is saved through ``workflows.catalogue.keep_item``, which keeps the
version before; nothing is deleted, only retired.

``kinds``   what there is, and how each kind is listed
``forms``   one ModelForm a kind, on the ground of ``item_form``
``sheets``  safety data sheets that are sent in as files
``saying``  a value in words, for facts and for what changed
"""
