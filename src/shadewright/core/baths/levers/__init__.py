"""Levers: what would narrow a dose, a recipe, or all recipes of a studio.

The chapters before say how sure a dose is and what spoils it. This one turns that
into something to do, most of it free: another bottle, another tool, the scale instead
of the syringe, a weaker stock, a larger batch. Nothing is proposed that cannot be done
with what stands there: the dose fits the tool, the bottle holds it, the pot has room.

A spread here is half of the 95 % interval as a share of the depth, as it stands on
the screens and on paper.

1. ``ways``       one dose, and a way to measure it
2. ``makeable``   stocks that could be made, the surest way for each strength
3. ``pulled``     what a lever is, and what comes of pulling it
4. ``proposals``  one lever at a time, and the best that can be reached
5. ``saying``     the advice in one sentence
6. ``scaling``    how sure a recipe is at this and at other batches
7. ``practice``   how a studio works, and how sure its doses are so
8. ``habits``     which tool or habit narrows a whole studio's recipes
9. ``strengths``  which stock strengths are worth keeping

Sources: arithmetic on [jcgm100]_; what is worth a word, and what nobody would do, is
our choice and says so.
"""
