"""What comes back from buyers: who has what, and what they write.

``kin`` finds the lots of the same bottle and jar, ``recall`` lists who has them,
``complaints`` keeps what a buyer wrote, and ``replies`` drafts the answer.
"""
