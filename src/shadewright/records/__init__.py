"""What is remembered: models, migrations, and the only code that asks the store.

Contents
--------
``models/``  the tables: people, the catalogue, the shelf, the ledgers
``shapes``   a row as a frozen core value, and back
``reads``    questions to the store
``writes``   the only changes to it
``copying``  every row as plain values, and back (backup, restore, migration)
"""
