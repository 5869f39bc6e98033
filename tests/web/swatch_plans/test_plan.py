"""The pages of sets of swatches: planned on one page, kept, followed."""

import re

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.records.models import Base, Bath, Dye, SwatchPlan
from shadewright.records.models.baths import BathAct, BathLine
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import Answer, read
from tests.web.stocks.made import made_to_the_end
from tests.workflows.bench import entered
from tests.workflows.shades.swatch_rows import kept_singles

pytestmark = pytest.mark.django_db
NEW = "/shades/plans/new/"


@pytest.fixture
def base(ines: object) -> Base:
    """A studio with a yarn, a palette of six dyes, and two of them on the shelf."""
    del ines
    row = Base.objects.create(name="Hollow 4-ply")
    kept_singles(row)
    for name in ("Gorse", "Sloe"):
        entered(dye(name))
    fit_now(why="test")
    return row


def dye(name: str) -> int:
    return Dye.objects.get(name=name).pk


def asked(client: Client, **said: object) -> Answer:
    return read(client.get(NEW, said))  # type: ignore[arg-type]


def kept(client: Client, page: Answer, **said: object) -> Answer:
    names = ("deed", "dyed_on")
    sent = {name: page.value(name) for name in names} | {"yarn_g": "10"} | said
    return read(client.post(NEW, sent, follow=True))


def test_a_set_begins_empty_and_faultless(client: Client, base: Base) -> None:
    page = asked(client)
    assert page.status == 200
    assert "Choose dyes: doses, stocks and jars stand here." in page.text
    assert "Not like this" not in page.text
    assert f'<option value="{base.pk}" selected>' in page.source


def test_a_ladder_says_what_it_takes_while_it_is_typed(
    client: Client, base: Base
) -> None:
    page = asked(client, kind="ladder", base=base.pk, dyes=dye("Gorse"), rungs="4")
    assert "4 swatches of 10 g: 40 g of Hollow 4-ply" in page.text
    assert "Have these stocks first" in page.text
    assert any("/dilute/?want_percent=0.5&volume_ml=" in x for x in page.links)
    assert "foretold from colours read by a meter" in page.source
    assert "nine in ten come out within ±" in page.text
    assert re.search(r"± \d+\.\d ", page.text.replace("\u00a0", " "))


def test_which_swatch_next_comes_up_filled_in(client: Client, base: Base) -> None:
    page = asked(client, kind="next", base=base.pk, count="4")
    assert "4 swatches of 10 g" in page.text
    done = kept(client, page, kind="next", base=base.pk, count="4")
    assert "The set is planned" in done.text
    assert SwatchPlan.objects.get().kind == "next"
    assert Bath.objects.filter(is_swatch=True).count() == 4
    palette = read(client.get(f"/shades/palettes/{base.pk}/?look=closer"))
    assert "4 swatches of this yarn are planned and not read yet" in palette.text


def test_three_trials_around_a_recipe(client: Client, base: Base) -> None:
    mix = f"{dye('Gorse')}:0.6,{dye('Sloe')}:0.2"
    page = asked(client, kind="bracket", base=base.pk, mix=mix)
    assert "Gorse 0.6 % + Sloe 0.2 %" in page.text
    assert "3 swatches of 10 g" in page.text
    assert page.value("mix") == mix
    done = kept(client, page, kind="bracket", base=base.pk, mix=mix)
    assert "Trials around a colour, on Hollow 4-ply." in done.text
    bad = asked(client, kind="bracket", base=base.pk, mix="12:x")
    assert "is no dye with its depth" in bad.text


def test_a_kept_set_leads_to_bench_sheet_and_tags(client: Client, base: Base) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Gorse"), "rungs": "4"}
    page = asked(client, **said)
    done = kept(client, page, **said, top_percent="2")
    plan = SwatchPlan.objects.get()
    first = Bath.objects.order_by("id")[0]
    assert "0 dyed, 0 read" in done.text
    assert f"/bench/{first.number}/" in done.links
    sheet = reverse("swatch-plan-sheet", args=[plan.pk])
    assert sheet in done.links
    assert read(client.get("/shades/plans/")).status == 200
    answer = client.get(sheet)
    assert answer.headers["Content-Type"] == "application/pdf"
    tags = next(link for link in done.links if link.startswith("/baths/tags.pdf"))
    assert tags.count("number=") == 4


def test_a_dyed_swatch_asks_for_its_colour(client: Client, base: Base) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Gorse"), "rungs": "2"}
    kept(client, asked(client, **said), **said, top_percent="1")
    bath = Bath.objects.order_by("id")[0]
    stamp = stamp_now(by=None)
    BathLine.objects.create(
        bath=bath, deed=stamp.deed, act=BathAct.FINISHED, step="finish", at=stamp.at
    )
    page = read(client.get(f"/shades/plans/{SwatchPlan.objects.get().pk}/"))
    assert "colour not read yet" in page.text
    assert reverse("read-bath", args=[bath.number]) in page.links


def test_new_bottles_are_taken_in_one_tap(client: Client, base: Base) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Gorse"), "rungs": "4"}
    kept(client, asked(client, **said), **said, top_percent="2")
    address = f"/shades/plans/{SwatchPlan.objects.get().pk}/"
    assert "New bottles stand there" not in read(client.get(address)).text
    weak = entered(dye("Gorse"), strength_percent=0.5).code
    page = read(client.get(address))
    assert f"can now be drawn from {weak}" in page.text
    assert f"{weak} 0.5 %" in page.text.replace("\u00a0", " ")
    sent = {"deed": page.value("deed")}
    done = read(client.post(f"{address}bottles/", sent, follow=True))
    assert "now from bottles that can be measured" in done.text
    assert "New bottles stand there" not in done.text


def test_a_stock_that_was_made_for_a_set_leads_back_to_it(
    client: Client, base: Base
) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Kelp"), "rungs": "2"}
    kept(client, asked(client, **said), **said, top_percent="2")
    row = SwatchPlan.objects.get()
    done = made_to_the_end(client, dye("Kelp"))
    assert f"/shades/plans/{row.pk}/" in done.links
    assert f"To {row.recipe.name}: 2 doses wait for it" in done.text
    other = made_to_the_end(client, dye("Sloe"))
    assert f"/shades/plans/{row.pk}/" not in other.links


def test_a_stock_that_was_thinned_for_a_set_leads_back_to_it(
    client: Client, base: Base
) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Gorse"), "rungs": "4"}
    kept(client, asked(client, **said), **said, top_percent="2")
    address = f"/shades/plans/{SwatchPlan.objects.get().pk}/"
    thin = next(x for x in read(client.get(address)).links if "/dilute/" in x)
    form = read(client.get(thin))
    names = ("deed", "want_percent", "volume_ml")
    done = read(client.post(thin, {x: form.value(x) for x in names}, follow=True))
    assert "New bottles stand there" in done.text


def test_a_set_is_given_up_but_for_what_was_dyed(client: Client, base: Base) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Gorse"), "rungs": "3"}
    kept(client, asked(client, **said), **said, top_percent="2")
    address = f"/shades/plans/{SwatchPlan.objects.get().pk}/"
    bath = Bath.objects.order_by("id")[0]
    stamp = stamp_now(by=None)
    BathLine.objects.create(
        bath=bath, deed=stamp.deed, act=BathAct.FINISHED, step="finish", at=stamp.at
    )
    sent = {"deed": read(client.get(address)).value("deed")}
    done = read(client.post(f"{address}give-up/", sent, follow=True))
    assert "2 swatches given up" in done.text
    assert done.text.count("given up") >= 3
    assert "Give the set up" not in done.text


def test_a_set_stands_in_no_list_of_recipes(client: Client, base: Base) -> None:
    said = {"kind": "ladder", "base": base.pk, "dyes": dye("Gorse"), "rungs": "2"}
    kept(client, asked(client, **said), **said, top_percent="1")
    plan = SwatchPlan.objects.get()
    assert plan.recipe.name not in read(client.get("/recipes/")).text
    for address in ("", "versions/2/"):
        answer = client.get(f"/recipes/{plan.recipe_id}/{address}")
        assert answer.headers["Location"] == f"/shades/plans/{plan.pk}/"


def test_faults_stand_in_plain_words(client: Client, base: Base) -> None:
    every = [each.pk for each in Dye.objects.all()]
    page = asked(client, kind="mixes", base=base.pk, dyes=every)
    assert "Dyes to mix must be 2 or 3; got 6." in page.text
    page = asked(client, kind="mixes", base=base.pk, dyes=every[:1])
    assert "Not like this" not in page.text
    page = asked(client, kind="ladder", base=base.pk, dyes=dye("Gorse"), rungs="99")
    assert page.fault("rungs") == "Rungs must be at most 10; got 99."
    page = asked(client, kind="next", base=base.pk, count="two")
    assert page.fault("count") == "Swatches must be a whole number."
    page = kept(client, page, kind="ladder", base=base.pk, top_percent="2", rungs="4")
    assert page.fault("dyes") == "Dyes: choose one at least."


def test_a_kind_that_nobody_knows_begins_a_ladder(client: Client, base: Base) -> None:
    page = asked(client, kind="1e309", base=base.pk)
    assert (page.status, page.value("kind")) == (200, "ladder")
    sent = kept(client, page, kind="rainbow", base=base.pk)
    assert sent.status == 422
    assert "one of those offered" in sent.text


def test_without_yarn_it_says_what_comes_first(client: Client, ines: object) -> None:
    del ines
    page = asked(client)
    assert "First a base, the yarn itself" in page.text
