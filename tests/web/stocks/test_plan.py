"""Planning a stock: what it takes, what is possible, and one made already."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Dye
from shadewright.workflows.jars import jar
from shadewright.workflows.makings import makings
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import today
from tests.web.benches import Bench, small_bench
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.django_db

NEW = "/stocks/new/"


@pytest.fixture
def bench() -> Bench:
    return small_bench()


def wanted(bench: Bench, **changed: str) -> dict[str, str]:
    return {
        "dye": str(bench.dye),
        "jar": str(bench.jar),
        "strength_percent": "1",
        "volume_ml": "500",
        "deed": str(uuid4()),
        "act": "begin",
        **changed,
    }


def sent(client: Client, bench: Bench, **changed: str) -> Answer:
    return read(client.post(NEW, wanted(bench, **changed)))


def made(client: Client, bench: Bench, **changed: str) -> Answer:
    asked = {"act": "made", "volume_ml": "", "powder_g": "5.2", "final_ml": "500"}
    return sent(client, bench, **{**asked, "made_on": "", **changed})


@pytest.mark.usefixtures("bench")
def test_before_there_is_a_dye_the_way_leads_to_one(client: Client) -> None:
    Dye.objects.update(is_retired=True)
    page = read(client.get(NEW))
    assert "No dye is on the shelf yet" in page.text
    assert "/dyes/new/" in page.links


@pytest.mark.usefixtures("bench")
@pytest.mark.parametrize("number", ["9" * 30, "-1", "٣", "../1"])
def test_a_dye_that_is_none_is_refused_in_a_sentence(
    client: Client, number: str
) -> None:
    page = read(client.get(NEW, {"dye": number}))
    assert page.status == 200
    assert "Dye must be one of those offered." in page.text


@pytest.mark.usefixtures("bench")
def test_the_first_look_asks_for_a_dye_and_offers_what_is_usual(
    client: Client,
) -> None:
    page = read(client.get(NEW))
    assert page.status == 200
    assert "Choose a dye" in page.text
    assert page.value("strength_percent") == "1"
    assert page.value("volume_ml") == "500"
    assert "No jar" not in page.text
    for words in ("2 %", "0.5 %", "0.1 %", "250 ml"):
        assert words in page.text


def test_a_dye_alone_gives_the_plan_from_its_jar(client: Client, bench: Bench) -> None:
    page = read(client.get(NEW, {"dye": bench.dye}))
    assert "J-1: 100 g left, lot L7" in page.text
    assert "J-2" not in page.text
    assert "From jar J-1" in page.text
    assert "5 g of powder" in page.text
    assert "about 15 ml of lukewarm water" in page.text
    assert "to 500 ml in all, when it is cold" in page.text


def test_the_jar_of_another_dye_gives_way_to_its_own(
    client: Client, bench: Bench
) -> None:
    page = read(client.get(NEW, {"dye": str(bench.other_dye), "jar": str(bench.jar)}))
    assert "From jar J-2" in page.text


def test_without_a_jar_the_plan_says_what_stays_unknown(
    client: Client, bench: Bench
) -> None:
    page = read(client.get(NEW, {"dye": str(bench.dye), "jar": ""}))
    assert "No jar: what is left in it and its lot stay unknown" in page.text


def test_warnings_stand_by_the_plan(client: Client, bench: Bench) -> None:
    page = read(client.get(NEW, {"dye": bench.other_dye}))
    assert "A metal-complex dye" in page.text
    assert "collected and handed in" in page.text
    assert "Mix fresh" in page.text
    near = read(client.get(NEW, {"dye": str(bench.dye), "strength_percent": "3"}))
    assert "Near what dissolves" in near.text


def test_the_safety_data_sheet_is_one_tap_away(client: Client, bench: Bench) -> None:
    asked = {"dye": str(bench.dye)}
    assert (
        "No safety data sheet is kept with this dye"
        in read(client.get(NEW, asked)).text
    )
    link = "https://example.org/slate.pdf"
    Dye.objects.filter(pk=bench.dye).update(data_sheet_link=link)
    assert link in read(client.get(NEW, asked)).links
    Dye.objects.filter(pk=bench.dye).update(data_sheet_link="", data_sheet_file="a.pdf")
    assert f"/dyes/{bench.dye}/sheet/" in read(client.get(NEW, asked)).links


def test_the_plan_has_its_paper_twin(client: Client, bench: Bench) -> None:
    page = read(client.get(NEW, {"dye": bench.dye}))
    address = next(link for link in page.links if "sheet.pdf" in link)
    sheet = client.get(address)
    assert sheet.headers["Content-Type"] == "application/pdf"
    assert sheet.content.startswith(b"%PDF")
    assert "mixing-sheet-slate" in sheet.headers["Content-Disposition"]


def test_a_sheet_of_nothing_leads_back_to_the_plan(
    client: Client, bench: Bench
) -> None:
    answer = client.get(f"{NEW}sheet.pdf", {"dye": str(bench.dye), "volume_ml": "-1"})
    assert answer.status_code == 302
    too_much = {"dye": str(bench.dye), "volume_ml": "99999"}
    assert client.get(f"{NEW}sheet.pdf", too_much).status_code == 422


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("volume_ml", "-5", "Volume must be"),
        ("volume_ml", "0", "Volume must be above 0"),
        ("volume_ml", "lots", "Volume is written as a volume"),
        ("volume_ml", "5 kg", "Volume is written as a volume"),
        ("volume_ml", "9999999999", "Volume must be"),
        ("volume_ml", "", "Volume is missing."),
        ("volume_ml", HOSTILE, "Volume is written as"),
        ("strength_percent", "-1", "Strength must be"),
        ("strength_percent", "0", "Strength must be above 0"),
        ("strength_percent", "strong", "Strength is written as"),
        ("strength_percent", "1 g", "Strength is written as"),
        ("strength_percent", "60", "Strength must be"),
        ("strength_percent", "nan", "Strength is written as"),
        ("strength_percent", HOSTILE, "Strength is written as"),
        ("strength_percent", "5", "Strength must be at most 4 %"),
        ("volume_ml", "20 l", "Powder must be at most the 100 g"),
        ("dye", "99", "Dye must be one of those offered."),
        ("dye", HOSTILE, "Dye must be one of those offered."),
        ("jar", "99", "Jar must be one of those offered."),
        ("jar", HOSTILE, "Jar must be one of those offered."),
    ],
)
def test_a_fault_stands_by_its_field_and_what_was_typed_stays(
    client: Client, bench: Bench, field: str, typed: str, sentence: str
) -> None:
    page = sent(client, bench, **{field: typed})
    assert page.status == 422
    assert sentence in page.fault(field)
    if field not in {"dye", "jar"}:
        assert page.value(field) == typed
    assert HOSTILE not in page.source
    assert makings() == ()


def test_a_jar_of_another_dye_is_refused(client: Client, bench: Bench) -> None:
    page = sent(client, bench, jar=str(bench.other_jar))
    assert page.status == 422
    assert "one of those offered" in page.fault("jar")


@pytest.mark.by_hand
def test_what_is_possible_is_one_tap_away(client: Client, bench: Bench) -> None:
    too_much = sent(client, bench, volume_ml="20 l")
    assert "Make 10000 ml at 1 % instead" in too_much.text  # 100 g at 1 % is 10 l
    too_strong = sent(client, bench, strength_percent="5")
    assert "Make 500 ml at 4 % instead" in too_strong.text  # 40 g dissolve in a litre
    way = next(link for link in too_strong.links if "strength_percent=4" in link)
    assert "20 g of powder" in read(client.get(way)).text


def test_live_answers_are_never_an_error_page(client: Client, bench: Bench) -> None:
    asked = {"dye": str(bench.dye), "volume_ml": "lots"}
    live = read(client.get(NEW, asked, headers={"HX-Request": "true"}))
    assert live.status == 200
    assert "Volume is written as" in live.text
    assert "autofocus" not in live.source
    assert read(client.get(NEW, asked)).status == 200


def test_begin_leads_to_the_first_step_and_is_written_once(
    client: Client, bench: Bench
) -> None:
    form = wanted(bench, strength_percent="0,5", volume_ml="0.25 l")
    first, again = client.post(NEW, form), client.post(NEW, form)
    (begun,) = makings()
    assert first.headers["Location"] == f"/stocks/making/{begun.id}/"
    assert again.headers["Location"] == first.headers["Location"]
    assert begun.stock.plan.powder_g == pytest.approx(1.25)
    assert begun.started_by == "Ines"


def test_showing_the_plan_again_writes_nothing(client: Client, bench: Bench) -> None:
    page = sent(client, bench, act="plan", volume_ml="250")
    assert page.status == 200
    assert "2.5 g of powder" in page.text
    assert makings() == ()


def test_one_made_already_is_shelved_once_with_its_true_strength(
    client: Client, bench: Bench
) -> None:
    form = wanted(bench, act="made", volume_ml="", powder_g="5.2", final_ml="500")
    form["made_on"] = (today() - timedelta(days=3)).isoformat()
    first, again = client.post(NEW, form), client.post(NEW, form)
    (bottle,) = shelf()
    assert first.headers["Location"] == f"/bottles/{bottle.code}/"
    assert again.headers["Location"] == first.headers["Location"]
    assert bottle.strength_percent == pytest.approx(1.04)
    assert bottle.age.days == 3
    assert jar(bench.jar).left_g == pytest.approx(94.8)


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("powder_g", "", "Powder weighed is missing."),
        ("powder_g", "0", "Powder weighed must be above 0"),
        ("powder_g", "a spoon", "Powder weighed is written as"),
        ("powder_g", "120", "at most the 100 g that jar J-1 holds"),
        ("final_ml", "-500", "Made up to must be"),
        ("final_ml", "5 g", "Made up to is written as"),
        ("final_ml", "5", "at most 50 %"),
        ("final_ml", HOSTILE, "Made up to is written as"),
        ("made_on", "2999-01-01", "Day made must be today or earlier"),
        ("made_on", "yesterday", "Day made cannot be read as it was typed."),
    ],
)
def test_a_fault_in_one_made_already(
    client: Client, bench: Bench, field: str, typed: str, sentence: str
) -> None:
    page = made(client, bench, **{field: typed})
    assert page.status == 422
    assert sentence in page.fault(field)
    assert page.value(field) == typed
    assert "<details open>" in page.source
    assert HOSTILE not in page.source
    assert shelf() == ()
    assert jar(bench.jar).left_g == 100.0


def test_hostile_names_are_shown_as_words(client: Client, bench: Bench) -> None:
    Dye.objects.filter(pk=bench.dye).update(name=HOSTILE, hazard_words=HOSTILE)
    page = read(client.get(NEW, {"dye": bench.dye}))
    assert HOSTILE in page.text
    assert HOSTILE not in page.source
