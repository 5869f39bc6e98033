"""Under which addresses and names a studio answers."""

import ipaddress
import subprocess
import sys
from pathlib import Path

import ifaddr
import pytest

from shadewright import settings
from tests.clones import plain_environment


def a_card(*ips: str) -> ifaddr.Adapter:
    own = [ifaddr.IP(ip if "." in ip else (ip, 0, 0), 24, "card") for ip in ips]
    return ifaddr.Adapter("card", "card", own)


def settings_of(folder: Path, lan: str) -> list[str]:
    """Return the hosts that the settings allow, read in a Python of their own."""
    own = {"SHADEWRIGHT_DATA": str(folder), "SHADEWRIGHT_LAN": lan}
    code = "from shadewright import settings; print(*settings.ALLOWED_HOSTS)"
    done = subprocess.run(
        [sys.executable, "-c", code],
        env={**plain_environment(), **own},
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout.split()


@pytest.mark.parametrize("asked", ["", "0"])
def test_unless_it_is_asked_for_no_address_is_looked_up(
    asked: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delattr(ifaddr, "get_adapters")
    assert settings.home_addresses(asked) == ()


def test_addresses_at_home_are_private_ipv4_the_likeliest_first(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    cards = [
        a_card("127.0.0.1", "::1"),
        a_card("172.17.0.1"),
        a_card("10.8.0.2", "169.254.3.4"),
        a_card("8.8.8.8"),
        a_card("192.168.1.30", "192.168.1.5", "fd00::2"),
    ]
    monkeypatch.setattr(ifaddr, "get_adapters", lambda: cards)
    found = ("192.168.1.5", "192.168.1.30", "10.8.0.2", "172.17.0.1")
    assert settings.home_addresses("1") == found


@pytest.mark.parametrize(
    ("host_name", "names"),
    [
        ("Loft", ("loft.local",)),
        ("loft-2.lan", ("loft-2.local",)),
        ("", ()),
        (".local", ()),
        ("*", ()),
        ("a b", ()),
        ("-x", ()),
    ],
)
def test_only_a_plain_name_is_answered_to(
    host_name: str, names: tuple[str, ...]
) -> None:
    assert settings.home_names(host_name) == names


@pytest.mark.parametrize("lan", ["", "0"])
def test_without_lan_this_machine_alone_is_answered(tmp_path: Path, lan: str) -> None:
    assert settings_of(tmp_path, lan) == ["127.0.0.1", "localhost"]


def test_with_lan_its_own_addresses_are_answered_too(tmp_path: Path) -> None:
    hosts = settings_of(tmp_path, "1")
    assert hosts[:2] == ["127.0.0.1", "localhost"]
    numbers = [host for host in hosts[2:] if not host.endswith(".local")]
    assert tuple(numbers) == settings.home_addresses("1")
    assert all(ipaddress.ip_address(number).is_private for number in numbers)


def test_the_tests_answer_this_machine_alone() -> None:
    assert settings.HOME_ADDRESSES == ()
