"""The four lists of the catalogue: sorted, searched, and what is retired."""

import re

import pytest
from django.test import Client

from shadewright.records.models import Auxiliary, Base, Dye, MeasuringTool
from shadewright.workflows.people import Person
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")
LISTS = {
    "dyes": "Dyes",
    "bases": "Bases",
    "acids": "Acids and helpers",
    "tools": "Measuring tools",
}


@pytest.fixture
def things(ines: Person) -> None:
    """Two of each kind, entered out of order."""
    del ines
    Dye.objects.create(name="Kelp", dye_class="levelling", solubility_g_per_l=50)
    Dye.objects.create(name="Gorse", dye_class="milling", is_mix_fresh=True)
    Base.objects.create(name="Sock", fibres="80 % wool, 20 % nylon", skein_g=100)
    Base.objects.create(name="Lace", fibres="Silk", skein_g=50)
    Auxiliary.objects.create(name="Vinegar", is_liquid=True, strength_g_per_100_ml=5)
    Auxiliary.objects.create(name="Citric acid")
    MeasuringTool.objects.create(name="Scale", kind="balance", readability=0.1)
    MeasuringTool.objects.create(name="Cylinder", kind="cylinder", size=500)


def text(client: Client, address: str) -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


def names(page: str) -> list[str]:
    table = page[page.index("<tbody") : page.index("</tbody")]
    return re.findall(r'<a href="/\w+/\d+/">([^<]*)</a>', table)


@pytest.mark.parametrize("slug", LISTS)
def test_an_empty_list_says_what_would_stand_there(client: Client, slug: str) -> None:
    page = text(client, f"/{slug}/")
    assert f"<h1>{LISTS[slug]}</h1>" in page
    assert "Nothing stands here yet" in page
    assert page.count(f'href="/{slug}/new/"') == 2


@pytest.mark.parametrize(
    ("slug", "order"),
    [
        ("dyes", ["Gorse", "Kelp"]),
        ("bases", ["Lace", "Sock"]),
        ("acids", ["Citric acid", "Vinegar"]),
        ("tools", ["Cylinder", "Scale"]),
    ],
)
@pytest.mark.usefixtures("things")
def test_it_is_sorted_by_name_both_ways(
    client: Client, slug: str, order: list[str]
) -> None:
    page = text(client, f"/{slug}/")
    assert names(page) == order
    assert f'href="/{slug}/" aria-current="page"' in page
    assert names(text(client, f"/{slug}/?sort=-name")) == order[::-1]


@pytest.mark.parametrize(
    ("address", "order"),
    [
        ("/dyes/?sort=dye_class", ["Kelp", "Gorse"]),
        ("/dyes/?sort=solubility", ["Kelp", "Gorse"]),
        ("/dyes/?sort=ci_name", ["Gorse", "Kelp"]),
        ("/bases/?sort=skein_g", ["Lace", "Sock"]),
        ("/bases/?sort=-fibres", ["Lace", "Sock"]),
        ("/acids/?sort=strength_g_per_100_ml", ["Vinegar", "Citric acid"]),
        ("/tools/?sort=kind", ["Cylinder", "Scale"]),
        ("/tools/?sort=readability", ["Scale", "Cylinder"]),
        ("/tools/?sort=nonsense", ["Cylinder", "Scale"]),
    ],
)
@pytest.mark.usefixtures("things")
def test_it_sorts_by_every_column(
    client: Client, address: str, order: list[str]
) -> None:
    assert names(text(client, address)) == order


@pytest.mark.usefixtures("things")
def test_it_searches_in_every_column(client: Client) -> None:
    assert names(text(client, "/dyes/?q=mill")) == ["Gorse"]
    assert names(text(client, "/bases/?q=NYLON+sock")) == ["Sock"]
    assert names(text(client, "/tools/?q=cyl")) == ["Cylinder"]
    page = text(client, "/acids/?q=sulphuric")
    assert "Nothing with “sulphuric”" in page


@pytest.mark.parametrize("slug", LISTS)
def test_html_in_a_search_or_a_name_stays_text(client: Client, slug: str) -> None:
    Dye.objects.create(name=HOSTILE, ci_name=HOSTILE)
    Base.objects.create(name=HOSTILE, fibres=HOSTILE)
    Auxiliary.objects.create(name=HOSTILE, hazard_words=HOSTILE)
    MeasuringTool.objects.create(name=HOSTILE, kind="jug")
    for address in (f"/{slug}/", f"/{slug}/?q=%3Cscript%3E"):
        page = client.get(address).content.decode()
        assert "<script>alert" not in page
        assert "&lt;script&gt;alert" in page


@pytest.mark.usefixtures("things")
def test_marks_stand_by_the_dyes_that_have_them(client: Client) -> None:
    Dye.objects.filter(name="Kelp").update(is_metal_complex=True)
    page = text(client, "/dyes/")
    assert page.count("holds a metal") == 1
    assert page.count("mix fresh") == 1


@pytest.mark.usefixtures("things")
def test_an_amount_has_its_unit(client: Client) -> None:
    assert "50 g/l" in text(client, "/dyes/")
    assert "100 g" in text(client, "/bases/")
    assert "5 g/100 ml" in text(client, "/acids/")
    tools = text(client, "/tools/")
    assert "0.1 g" in tools
    assert "500 ml" in tools


@pytest.mark.parametrize(
    ("slug", "model"),
    [
        ("dyes", Dye),
        ("bases", Base),
        ("acids", Auxiliary),
        ("tools", MeasuringTool),
    ],
)
@pytest.mark.usefixtures("things")
def test_what_is_retired_leaves_the_list_and_can_come_back(
    client: Client, slug: str, model: type[Dye]
) -> None:
    row = model.objects.first()
    assert row is not None
    note = client.post(f"/{slug}/{row.pk}/retire/", follow=True).content.decode()
    assert f"{row.name} is retired" in note
    assert f'action="/{slug}/{row.pk}/back/"' in note
    assert row.name not in names(text(client, f"/{slug}/"))
    assert "1 retired" in text(client, f"/{slug}/")
    assert row.name in names(text(client, f"/{slug}/retired/"))
    client.post(f"/{slug}/{row.pk}/back/")
    assert row.name in names(text(client, f"/{slug}/"))
    assert "Nothing is retired." in text(client, f"/{slug}/retired/")


def test_no_list_or_form_offers_a_dangerous_acid(client: Client) -> None:
    page = text(client, "/acids/new/")
    assert "Vinegar of 5 %" in page
    for name in ("ulphuric", "lacial", "ormic acid", "acetic acid"):
        assert name not in page
