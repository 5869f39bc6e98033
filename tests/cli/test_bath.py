"""``shadewright bath``: sums as typed, and what is refused."""

import pytest

from tests.cli.typed import Terminal

BATH = "bath --fibre 100g --dose Gorse=0.6%@1% --dose Slate=0.4%@1%"
DRY = "bath --fibre 100g --dose Gorse=0.6%"


@pytest.mark.by_hand
def test_the_answer_has_every_key(typed: Terminal) -> None:
    answer = typed(f"{BATH} --acid citric:2% --salt glauber-anhydrous:5% --json").answer
    gorse, slate = answer["doses"]
    assert gorse["dye"] == "Gorse"
    assert gorse["depth_percent"] == pytest.approx(0.6)
    assert gorse["dye_g"] == pytest.approx(0.6)  # 100 g x 0.6 %
    assert gorse["stock_ml"] == pytest.approx(60)  # 0.6 g at 1 g/100 ml
    assert gorse["stock_g"] == pytest.approx(60.49, abs=0.005)  # 59.89 + 0.6
    assert gorse["u_depth_rel"] is None
    assert gorse["u_why"]
    assert gorse["advice"] is None
    assert slate["stock_ml"] == pytest.approx(40)
    assert answer["total_depth_percent"] == pytest.approx(1)
    assert answer["liquor_ml"] == pytest.approx(3000)  # 30 l/kg
    assert answer["water_ml"] == pytest.approx(2900)  # less 60 and 40
    assert answer["acid_g"] == pytest.approx(2)
    assert answer["salt_g"] == pytest.approx(5)
    assert answer["salt_decahydrate_g"] == pytest.approx(11.34, abs=0.005)
    assert isinstance(answer["warnings"], list)


def test_what_was_not_asked_for_is_null_with_its_reason(typed: Terminal) -> None:
    answer = typed(f"{DRY} --json").answer
    assert answer["acid_g"] is None
    assert answer["acid_why"]
    assert answer["salt_g"] is None
    assert answer["salt_why"]
    (dose,) = answer["doses"]
    assert dose["stock_ml"] is None
    assert dose["stock_g"] is None
    assert dose["stock_why"]


@pytest.mark.by_hand
def test_vinegar_comes_in_ml_and_counts_as_liquor(typed: Terminal) -> None:
    answer = typed(f"{BATH} --acid vinegar5:2% --wet-yarn 250g --json").answer
    assert answer["acid_ml"] == pytest.approx(40)  # 2 g at 5 g/100 ml
    assert answer["acid_pure_g"] == pytest.approx(2)
    assert "acid_g" not in answer
    # 3000 - 100 of stock - 40 of vinegar - 150 in the yarn
    assert answer["water_ml"] == pytest.approx(2710)


def test_an_acid_of_unknown_strength_is_pure_and_cautioned(typed: Terminal) -> None:
    answer = typed(f"{BATH} --acid acetic:2% --json").answer
    assert answer["acid_g"] == pytest.approx(2)
    assert answer["acid_ml"] is None
    assert "label" in answer["acid_why"]
    assert any("licensed" in warning for warning in answer["warnings"])


@pytest.mark.by_hand
def test_a_scale_shows_its_steps(typed: Terminal) -> None:
    stock = typed(f"{BATH} --balance 0.1g --json").answer
    assert [dose["stock_g_scale"] for dose in stock["doses"]] == [60.5, 40.3]
    assert any("kitchen scale" in warning for warning in stock["warnings"])
    dry = typed(f"{DRY} --balance 0.5g+-0.2g --json").answer
    assert dry["doses"][0]["dye_g_scale"] == pytest.approx(0.5)
    assert "too little to weigh well" in dry["doses"][0]["advice"]
    assert not any("kitchen scale" in warning for warning in dry["warnings"])


def test_a_missing_tool_is_warned_of(typed: Terminal) -> None:
    tool, balance = typed(f"{BATH} --json").answer["warnings"]
    assert "No measuring tool" in tool
    assert "how well the yarn is weighed" in balance
    named = typed(f'{BATH} --measure "syringe 20ml" --balance 1g+-1g --json').answer
    assert named["warnings"] == []
    assert named["doses"][0]["advice"] == "Fill the 20\u00a0ml syringe 3 times."
    dry = typed(f"{DRY} --json").answer["warnings"]
    assert "how well yarn and dry dye are weighed" in dry[-1]
    weighed = typed(f"{BATH} --by-weight --json").answer["warnings"]
    assert weighed == [
        "No balance was named: how well yarn and doses are weighed is left out."
    ]


def test_the_ratio_is_written_either_way(typed: Terminal) -> None:
    for ratio in ("20", "1:20", "20:1"):
        answer = typed(f"{BATH} --ratio {ratio} --json").answer
        assert answer["liquor_ml"] == pytest.approx(2000)


def test_a_bath_that_stock_overfills_says_the_ratio(typed: Terminal) -> None:
    answer = typed("bath --fibre 100g --dose G=5%@1% --ratio 4 --json").answer
    assert answer["water_ml"] == 0
    assert answer["liquor_ratio"] == pytest.approx(5)
    assert any("The ratio will be 5" in warning for warning in answer["warnings"])


@pytest.mark.parametrize("dye_class", ["milling", "super-milling"])
def test_salt_with_a_class_that_forbids_it(typed: Terminal, dye_class: str) -> None:
    line = f"{BATH} --salt glauber-decahydrate:5% --dye-class {dye_class} --json"
    assert any("Leave the Glauber" in told for told in typed(line).answer["warnings"])


def test_a_person_reads_aligned_lines(typed: Terminal) -> None:
    out = typed(
        f"{BATH} --dose '\"Sea Kelp\"=0.03%@1%' --acid acetic@10%:2% "
        "--salt glauber-anhydrous:5% --wet-yarn 200g"
    ).out.replace("\u00a0", " ")
    assert out.splitlines()[:9] == [
        "liquor       3000 ml",
        "in the yarn  100 ml",
        "fresh water  2777 ml",
        "salt         5 g of anhydrous Glauber’s salt",
        "acid         20 ml of acetic acid of 10 %",
        "Gorse        60 ml of the 1 % stock, or 60.49 g (0.6 %)",
        "Slate        40 ml of the 1 % stock, or 40.33 g (0.4 %)",
        "Sea Kelp     3 ml of the 1 % stock, or 3.025 g (0.03 %)",
        "all dyes     1.03 %",
    ]
    assert "! Sea Kelp: 3 ml is too little to measure well: take 6 ml of a" in out


def test_dry_dye_brings_the_powder_caution(typed: Terminal) -> None:
    out = typed(f"{DRY} --acid sulphuric:1g").out.replace("\u00a0", " ")
    assert "Gorse        0.6 g of dry dye (0.6 %)" in out
    assert "acid         1 g of pure sulphuric acid" in out
    assert "N95/FFP2 respirator" in out


@pytest.mark.parametrize(
    ("words", "option"),
    [
        ("--fibre 100 --dose G=1%", "--fibre"),
        ("--fibre 0g --dose G=1%", "--fibre"),
        ("--fibre -5g --dose G=1%", "--fibre"),
        ("--fibre 9999999kg --dose G=1%", "--fibre"),
        ("--fibre much --dose G=1%", "--fibre"),
        ("--dose G=1%", "--fibre"),
        ("--fibre 100g", "--dose"),
        ("--fibre 100g --dose G", "--dose"),
        ("--fibre 100g --dose G=0%", "--dose"),
        ("--fibre 100g --dose G=1%@60%", "--dose"),
        ("--fibre 100g --dose G=1% --ratio 0", "--ratio"),
        ("--fibre 100g --dose G=1% --ratio 30l", "--ratio"),
        ("--fibre 100g --dose G=1% --acid lemon:2%", "--acid"),
        ("--fibre 100g --dose G=1% --acid citric:2ml", "--acid"),
        ("--fibre 100g --dose G=1% --acid citric:-2%", "--acid"),
        ("--fibre 100g --dose G=1% --acid vinegar5:2g", "--acid"),
        ("--fibre 100g --dose G=1% --acid acetic:20ml", "--acid"),
        ("--fibre 100g --dose G=1% --acid citric@50%:2%", "--acid"),
        ("--fibre 100g --dose G=1% --salt table:2%", "--salt"),
        ("--fibre 100g --dose G=1% --salt glauber-anhydrous:2ml", "--salt"),
        ("--fibre 100g --dose G=1% --salt glauber-anhydrous:0%", "--salt"),
        ("--fibre 100g --dose G=1% --wet-yarn 50g", "--wet-yarn"),
        ("--fibre 100g --dose G=1% --wet-yarn 0g", "--wet-yarn"),
        ("--fibre 100g --dose G=1% --balance 0g", "--balance"),
        ("--fibre 100g --dose G=1% --measure spoon", "--measure"),
        ("--fibre 100g --dose G=1% --dye-class x", "--dye-class"),
    ],
)
def test_what_cannot_be_is_told_in_one_line(
    typed: Terminal, words: str, option: str
) -> None:
    assert option in typed(f"bath {words}").refusal


@pytest.mark.parametrize(
    "words",
    [
        "--fibre 1000kg --dose G=50%@0.01%",
        "--fibre 1000kg --dose G=1% --ratio 1000 --acid citric:1g/l",
        "--fibre 0.000001g --dose G=0.001%@50%",
    ],
)
def test_the_ends_of_every_range_answer_or_say_why(typed: Terminal, words: str) -> None:
    found = typed(f"bath {words} --json")
    assert found.answer if found.status == 0 else found.refusal


def test_acid_of_unknown_strength_is_called_pure_and_asked_about(
    typed: Terminal,
) -> None:
    line = "bath --fibre 100g --dose Gorse=1%@1% --acid acetic:2%"
    shown = typed(line).out.replace("\u00a0", " ")
    assert "acid         2 g of pure acetic acid\n" in shown
    assert "! The acid’s strength is not known" in shown
    answer = typed(f"{line} --json").answer
    assert (answer["acid_g"], answer["acid_ml"]) == (2.0, None)
    assert answer["acid_why"] in answer["warnings"]


def test_what_a_label_and_a_jar_may_mean_is_said(typed: Terminal) -> None:
    """By weight, 85 % of formic acid are 101 g in 100 ml and not 85."""
    bath = "bath --fibre 100g --dose Gorse=1%@1% --json"
    by_label = typed(f"{bath} --acid formic@85%:1%").answer["warnings"]
    assert any("by weight" in told for told in by_label)
    for plain in ("vinegar5:2%", "citric:2%", "acetic:2%"):
        told = typed(f"{bath} --acid {plain}").answer["warnings"]
        assert not any("by weight" in warning for warning in told)
    dry = typed("bath --fibre 100g --dose Gorse=1% --json").answer["warnings"]
    assert any("divided by 0.8" in told for told in dry)
    assert not any("divided by" in told for told in typed(bath).answer["warnings"])


@pytest.mark.by_hand
def test_a_depth_says_how_sure_it_is(typed: Terminal) -> None:
    tools = '--balance 1g --measure "cylinder 100ml B" --json'
    gorse, slate = typed(f"{BATH} {tools}").answer["doses"]
    # ±1 ml of 60 ml: 1/60/√3; yarn 100 g on 1 g, tared: 0.01/√6
    assert gorse["u_depth_rel"] == pytest.approx(0.0104527, abs=1e-6)
    assert [term["name"] for term in gorse["terms"]] == [
        "mark of the 100\u00a0ml cylinder",
        "reading the scale, yarn",
    ]
    assert gorse["terms"][0]["u_rel"] == pytest.approx(0.0096225, abs=1e-6)
    assert gorse["terms"][1]["u_rel"] == pytest.approx(0.0040825, abs=1e-6)
    # the rectangle of ±1.667 % and the triangle of ±1 % reach 2.667 % together
    assert 0.6 * (1 - 0.02667) < gorse["depth_from_percent"] < 0.6 * (1 - 0.0165)
    assert gorse["depth_to_percent"] - 0.6 == pytest.approx(
        0.6 - gorse["depth_from_percent"]
    )
    assert slate["u_depth_rel"] > gorse["u_depth_rel"]
    assert "u_why" not in gorse


def test_a_strength_brings_its_own_spread(typed: Terminal) -> None:
    (dose,) = typed("bath --fibre 100g --dose Gorse=0.6%@1%+-2% --json").answer["doses"]
    assert dose["u_depth_rel"] == pytest.approx(0.02)
    assert dose["terms"] == [
        {"name": "strength of the Gorse stock", "u_rel": pytest.approx(0.02)}
    ]


def test_what_is_not_known_is_null_with_its_reason(typed: Terminal) -> None:
    (dose,) = typed(f"{DRY} --json").answer["doses"]
    for key in ("u_depth_rel", "depth_from_percent", "depth_to_percent"):
        assert dose[key] is None
    assert dose["terms"] == []
    assert "--balance" in dose["u_why"]


def test_stock_by_weight_comes_in_grams_first(typed: Terminal) -> None:
    line = f"{BATH} --by-weight --balance 0.1g+-0.2g"
    out = typed(line).out.replace("\u00a0", " ")
    assert "60.49 g of the 1 % stock, or 60 ml (0.6 % ± 0.0066 %)" in out
    assert "mostly: room that the dye takes up in the stock" in out
    answer = typed(f"{line} --json").answer
    assert [dose["stock_g_scale"] for dose in answer["doses"]] == [60.5, 40.3]


def test_the_same_command_gives_the_same_answer(typed: Terminal) -> None:
    line = 'bath --fibre 100g --dose G=0.004%@1% --measure "syringe 20ml"'
    assert typed(line).out == typed(line).out
    assert "from 0.001" in typed(line).out
