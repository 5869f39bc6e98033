"""Days made by chance: as JSON, with all that can be in one."""

from random import Random
from typing import Any

Doc = dict[str, Any]


def clock(minutes: int) -> str:
    """Return a time of day, so many minutes after eight."""
    return f"{8 + minutes // 60:02d}:{minutes % 60:02d}"


def made_day(seed: int, *, most_baths: int = 9) -> Doc:
    """Return a day that may or may not hold its baths."""
    draws = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    length = draws.choice([240, 480, 600])
    day: Doc = {
        "start": "08:00",
        "end": clock(length),
        "people": [
            {
                "name": f"person {n}",
                "from": clock(draws.choice([0, 0, 30, 60])),
                "to": clock(draws.choice([length, length - 60, length // 2])),
            }
            for n in range(draws.randint(1, 2))
        ],
        "pots": [
            {
                "name": f"P{n}",
                "volume_l": draws.choice([5, 10, 15]),
                "mass_kg": draws.choice([1, 2, 4]),
                "material": "stainless",
            }
            for n in range(draws.randint(1, 5))
        ],
        "circuits": [
            {"name": name, "limit_kw": draws.choice([2, 3.5, 4])}
            for name in "AB"[: draws.randint(0, 2)]
        ],
        "sinks": draws.randint(1, 2),
        "rack_slots": draws.choice([6, 12, 40]),
        "rack_used": draws.choice([0, 3]),
        "washout_min": draws.choice([0, 10]),
    }
    day["sources"] = [_source(draws, n, day) for n in range(draws.randint(1, 4))]
    count = draws.randint(1, most_baths)
    day["baths"] = [_bath(draws, n, day, length) for n in range(count)]
    return day


def _source(draws: Random, number: int, day: Doc) -> Doc:
    source: Doc = {
        "name": f"S{number}",
        "power_kw": draws.choice([1.5, 1.8, 2.5]),
        "kind": draws.choice(["induction", "gas", "coil"]),
    }
    if day["circuits"] and draws.random() < 0.8:
        source["circuit"] = draws.choice(day["circuits"])["name"]
    return source


def _bath(draws: Random, number: int, day: Doc, length: int) -> Doc:
    is_overnight = draws.random() < 0.4
    minutes = {
        "fill": draws.choice([0, 3, 5]),
        "heat": draws.choice([10, 25]),
        "dose": draws.choice([0, 5]),
        "ramp": draws.choice([20, 40]),
        "hold": draws.choice([20, 40, 0]),
        "check": draws.choice([0, 2]),
        "cool": draws.choice([0, 30, 90]),
        "rinse": draws.choice([0, 10]),
    }
    if is_overnight:
        del minutes["rinse"]
    bath: Doc = {
        "name": f"B{number}",
        "family": draws.choice("xyz"),
        "depth_percent": draws.choice([0.1, 1, 2]),
        "fibre_g": draws.choice([100, 250, 400]),
        "skeins": draws.randint(1, 4),
        "liquor_ratio": 20,
        "minutes": minutes,
        "overnight": is_overnight,
        "cools_on_source": draws.random() < 0.5,
    }
    if draws.random() < 0.4:
        stage = "hold" if minutes["hold"] else "ramp"
        bath["touches"] = [
            {"stage": stage, "at_min": draws.choice([0, 10]), "minutes": 3}
            for _touch in range(draws.randint(1, 2))
        ]
    if not is_overnight and draws.random() < 0.2:
        bath["due"] = clock(draws.choice([200, length]))
    if draws.random() < 0.15:
        bath["pinned"] = {"pot": draws.choice(day["pots"])["name"]}
        if draws.random() < 0.5:
            bath["pinned"]["start_min"] = draws.choice([0, 20, 70])
    return bath


def with_steam(day: Doc, seed: int) -> Doc:
    """Return a day with steamers, steamed baths, and minutes that were learned."""
    draws = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    steamers = [
        {"name": f"steamer {n}", "power_kw": 2.0, "kind": "steamer"}
        | ({"room_g": draws.choice([200, 500])} if draws.random() < 0.5 else {})
        | ({"circuit": day["circuits"][0]["name"]} if day["circuits"] else {})
        for n in range(draws.randint(0, 2))
    ]
    baths = [_perhaps_steamed(draws, bath, day) for bath in day["baths"]]
    return day | {"sources": day["sources"] + steamers, "baths": baths}


def _perhaps_steamed(draws: Random, bath: Doc, day: Doc) -> Doc:
    if draws.random() < 0.4 and not bath.get("pinned"):
        return bath | {"steamed": True}
    known = [
        {
            "pot": pot["name"],
            "source": source["name"],
            "heat": draws.choice([8, 30]),
            "ramp": draws.choice([25, 50]),
        }
        for pot in day["pots"]
        for source in day["sources"]
        if draws.random() < 0.3
    ]
    return bath | {"minutes_by_place": known}
