"""A bath made into a page: its steps side by side, its ledger, its keys."""

from collections.abc import Iterator
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.quantities import amount_text, number_text
from shadewright.web.acidity.sour import sour_bath
from shadewright.web.baths.heating import shown_heat
from shadewright.web.baths.pages import BathPage, Entry, Said
from shadewright.web.baths.side_by_side import step_rows, title_of
from shadewright.web.baths.words import act_words, status_chip
from shadewright.web.depths import depth_rows
from shadewright.web.pages import Link
from shadewright.web.parts import Caution, Key
from shadewright.web.purposes import PURPOSE_WORDS
from shadewright.web.templatetags.house import day
from shadewright.workflows.bath_cautions import recipe_cautions
from shadewright.workflows.bath_pages import BathAct, BathNow, BathStatus, DoneLine
from shadewright.workflows.days.order_pages import orders_of_bath
from shadewright.workflows.recipes import version

_OPEN = {BathStatus.PLANNED, BathStatus.GOING, BathStatus.COOLING}


def bath_page(bath: BathNow) -> BathPage:
    """Return the page of a bath."""
    recipe = version(bath.version_id)
    kind = "Swatch" if bath.is_swatch else "Bath"
    keys = tuple(_keys(bath))
    return BathPage(
        title=f"{kind} {bath.number}",
        fact=f"{bath.recipe_name} on {bath.base_name}, {day(bath.dyed_on)}.",
        crumbs=(
            Link(words="Dye days", address="/days/"),
            Link(words=day(bath.dyed_on), address=reverse("day", args=[bath.dyed_on])),
        ),
        state=status_chip(bath.status),
        keys=keys[:3],
        more=(*keys[3:], *_more(bath)),
        steps=step_rows(bath),
        entries=tuple(_entry(bath, line) for line in bath.lines),
        recipe=Link(
            words=f"{recipe.recipe_name}, version {recipe.number}",
            address=reverse("recipe-version", args=[recipe.recipe_id, recipe.number]),
        ),
        facts=tuple(fact for fact in _facts(bath) if fact.words),
        depths=depth_rows(bath.number),
        sour=sour_bath(bath),
        heat=shown_heat(bath.heat, top_caution=bath.top_caution),
        cautions=tuple(
            Caution(title="Before it is dyed", text=sentence)
            for sentence in recipe_cautions(bath.version_id)
            if bath.status in _OPEN
        ),
    )


def _keys(bath: BathNow) -> Iterator[Key]:
    if bath.status in _OPEN:
        yield from _open_keys(bath)
    elif bath.has_lot:
        at = [bath.number]
        lot, trace = reverse("lot", args=at), reverse("trace-lot", args=at)
        if bath.is_swatch:
            colour = reverse("read-bath", args=at)
            yield Key(words="Read its colour", address=colour, icon="eye", css="first")
        first = "" if bath.is_swatch else "first"
        yield Key(words="Its lot", address=lot, icon="yarn", css=first)
        yield Key(words="Trace", address=trace)
    elif bath.status is BathStatus.FINISHED:
        finish = reverse("finish-bath", args=[bath.number])
        yield Key(words="Write the lot", address=finish, css="first")
    if bath.is_swatch:
        yield Key(words="Swatch tag", address=_paper("swatch-tags", bath))


def _open_keys(bath: BathNow) -> Iterator[Key]:
    at = [bath.number]
    bench, card = reverse("bench", args=at), _paper("bath-cards", bath)
    yield Key(words="To the bench", address=bench, icon="drop", css="first")
    yield Key(words="Card", address=card, icon="print")
    yield Key(words="Finish", address=reverse("finish-bath", args=at))
    yield Key(words="Type a card in", address=reverse("type-card", args=at))


def _paper(name: str, bath: BathNow) -> str:
    return f"{reverse(name)}?{urlencode({'number': bath.number})}"


def _more(bath: BathNow) -> Iterator[Key]:
    again = f"{reverse('plan-bath')}?{urlencode({'again': bath.number})}"
    is_planned = bath.status is BathStatus.PLANNED
    yield Key(words="Plan it anew" if is_planned else "Plan it again", address=again)
    if bath.status in _OPEN:
        yield Key(words="Give up", address=reverse("give-up-bath", args=[bath.number]))


def _facts(bath: BathNow) -> Iterator[Said]:
    yield Said(term="Base", words=bath.base_name)
    yield Said(term="Mill lot", words=bath.mill_lot or "not known")
    yield Said(term="Dry yarn", words=amount_text(bath.fibre_g, "g"))
    yield Said(term="Doses", words="by weight" if bath.is_by_weight else "")
    yield Said(term="Skeins", words=str(bath.skeins or ""))
    yield Said(term="Pot", words=bath.pot_name or "not chosen")
    yield Said(term="Burner", words=bath.source_name)
    ratio = number_text(bath.liquor_ratio, digits=4)
    liquor = amount_text(bath.liquor_ratio * bath.fibre_g / 1000, "l")
    yield Said(term="Liquor", words=f"{liquor}, 1:{ratio}")
    yield Said(term="The colour", words=PURPOSE_WORDS[bath.purpose])
    orders = (f"order {at}, {whom}" for at, whom in orders_of_bath(bath.number))
    yield Said(term="For", words="\n".join(orders))
    yield Said(term="Notes", words=bath.notes)


def _entry(bath: BathNow, line: DoneLine) -> Entry:
    by = ", ".join(part for part in (line.by, line.device) if part)
    return Entry(
        deed=line.deed,
        at=line.at,
        words=_words(bath, line),
        by=by,
        note=line.note,
        is_undone=line.is_undone and line.act != BathAct.UNDO,
        may_undo=line.may_undo and line.act != BathAct.UNDO,
    )


def _words(bath: BathNow, line: DoneLine) -> str:
    act, step = act_words(line.act), line.step and title_of(bath, line.step)
    is_said = step.casefold().startswith(act.casefold())
    words = step if is_said else ": ".join(part for part in (act, step) if part)
    if line.value is not None:
        words = f"{words}, {amount_text(line.value, line.unit)}"
    return f"{words} from {line.bottle}" if line.bottle else words
