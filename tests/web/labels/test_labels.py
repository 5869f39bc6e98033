"""Labels: which are ticked, what comes out, what is remembered."""

import pytest
from django.test import Client

from shadewright.exchange.label_photo import code_in_photo
from shadewright.workflows.bottles import draw, enter_bottle, pour_away
from shadewright.workflows.filling import Particulars
from shadewright.workflows.labels import print_labels
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import stamp_now
from tests.web.benches import Bench, small_bench
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.django_db


@pytest.fixture
def bench() -> Bench:
    return small_bench()


@pytest.fixture
def bottle(bench: Bench) -> ShelfBottle:
    return entered(bench)


def entered(bench: Bench) -> ShelfBottle:
    return enter_bottle(
        dye_id=bench.dye,
        strength_percent=1.0,
        volume_ml=500.0,
        stamp=stamp_now(by=None),
        about=Particulars(),
    )


def is_ticked(page: Answer, code: str) -> bool:
    return f'value="{code}"' in page.source and any(
        f'value="{code}"' in tag and "checked" in tag
        for tag in page.source.split("<input")[1:]
    )


@pytest.mark.usefixtures("bench")
def test_an_empty_shelf_leads_to_making_a_stock(client: Client) -> None:
    page = read(client.get("/labels/"))
    assert "No bottle stands on the shelf yet" in page.text
    assert "/stocks/new/" in page.links


def test_bottles_that_want_a_label_are_ticked(
    client: Client, bench: Bench, bottle: ShelfBottle
) -> None:
    holds, empty, gone = entered(bench), entered(bench), entered(bench)
    print_labels(codes=[holds.code], format_key="a4-21")
    draw(code=empty.code, volume_ml=500.0, stamp=stamp_now(by=None))
    pour_away(code=gone.code, stamp=stamp_now(by=None))
    page = read(client.get("/labels/"))
    assert is_ticked(page, bottle.code)
    assert holds.code in page.text
    assert not is_ticked(page, holds.code)
    assert not is_ticked(page, empty.code)
    assert gone.code not in page.text


def test_one_bottle_can_be_asked_for(
    client: Client, bench: Bench, bottle: ShelfBottle
) -> None:
    other = entered(bench)
    page = read(client.get("/labels/", {"codes": bottle.code}))
    assert is_ticked(page, bottle.code)
    assert not is_ticked(page, other.code)


def test_the_sheet_is_a_pdf_and_is_remembered(
    client: Client, bottle: ShelfBottle
) -> None:
    sent = {"codes": [bottle.code], "format": "a4-24", "skip_first": "5"}
    answer = client.post("/labels/", sent)
    assert answer.headers["Content-Type"] == "application/pdf"
    name = f'inline; filename="bottle-labels-{bottle.code.lower()}.pdf"'
    assert answer.headers["Content-Disposition"] == name
    assert not shelf_bottle(bottle.code).wants_label
    page = read(client.get("/labels/"))
    assert '<option value="a4-24" selected>' in page.source


def test_the_preview_is_a_picture_of_what_would_be_printed(
    client: Client, bottle: ShelfBottle
) -> None:
    page = read(
        client.get("/labels/", {"codes": bottle.code, "format": "single-89x36"})
    )
    (address,) = [one for one in page.pictures if "preview" in one]
    answer = client.get(address)
    assert answer.headers["Content-Type"] == "image/png"
    assert code_in_photo(answer.content) == bottle.code
    assert shelf_bottle(bottle.code).wants_label


def test_there_is_no_preview_of_what_cannot_be(
    client: Client, bottle: ShelfBottle
) -> None:
    page = read(client.get("/labels/", {"codes": bottle.code, "skip_first": "some"}))
    assert page.pictures == []
    assert "Tick a bottle: its label stands here." in page.text
    assert client.get("/labels/preview.png").status_code == 422


@pytest.mark.parametrize(
    ("changed", "field", "sentence"),
    [
        ({"codes": []}, "codes", "Tick at least one bottle."),
        ({"codes": ["Q9QQ"]}, "codes", "must be one of those offered"),
        ({"codes": [HOSTILE]}, "codes", "must be one of those offered"),
        ({"format": "a3"}, "format", "must be one of those offered"),
        ({"skip_first": "-1"}, "skip_first", "from 0 to 20; got -1"),
        ({"skip_first": "21"}, "skip_first", "from 0 to 20; got 21"),
        ({"skip_first": "some"}, "skip_first", "is a whole number"),
        ({"skip_first": "1.5"}, "skip_first", "is a whole number"),
        ({"skip_first": "9" * 30}, "skip_first", "from 0 to 20"),
        ({"skip_first": ""}, "skip_first", "is missing"),
        (
            {"format": "single-62x29", "skip_first": "1"},
            "skip_first",
            "0 for single labels",
        ),
    ],
)
def test_a_fault_stands_by_its_field_and_nothing_is_printed(
    client: Client,
    bottle: ShelfBottle,
    changed: dict[str, object],
    field: str,
    sentence: str,
) -> None:
    sent = {"codes": [bottle.code], "format": "a4-21", "skip_first": "0", **changed}
    page = read(client.post("/labels/", sent))
    assert page.status == 422
    assert sentence in page.fault(field)
    assert page.value("skip_first") == sent["skip_first"]
    assert HOSTILE not in page.source
    assert shelf_bottle(bottle.code).wants_label


def test_a_single_label_asks_for_its_paper_once(
    client: Client, bottle: ShelfBottle
) -> None:
    address = f"/bottles/{bottle.code}/label.pdf"
    first = client.get(address)
    assert first.headers["Location"] == f"/labels/?codes={bottle.code}"
    assert shelf_bottle(bottle.code).wants_label
    named = client.get(address, {"format": "single-62x29"})
    assert named.headers["Content-Type"] == "application/pdf"
    assert not shelf_bottle(bottle.code).wants_label
    assert client.get(address).headers["Content-Type"] == "application/pdf"


@pytest.mark.parametrize(
    ("address", "status"),
    [
        ("/bottles/Q9Q/label.pdf?format=a4-21", 404),
        ("/bottles/%3Cb%3E/label.pdf", 404),
        ("/bottles/CODE/label.pdf?format=a3", 422),
    ],
)
def test_a_single_label_that_cannot_be(
    client: Client, bottle: ShelfBottle, address: str, status: int
) -> None:
    answer = client.get(address.replace("CODE", bottle.code))
    assert answer.status_code == status
