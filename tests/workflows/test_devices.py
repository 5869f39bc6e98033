"""Phones: let in by a code, kept in by a token, put out by the desk."""

import re
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta

import pytest
from django.db import connection
from time_machine import TimeMachineFixture

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
    TooManyTriesError,
)
from shadewright.records.models import Device, PairingCode, PairingTry
from shadewright.workflows import opening, wrong_codes
from shadewright.workflows.devices import (
    FreshCode,
    device_of,
    devices,
    make_code,
    pair,
    revoke,
)
from shadewright.workflows.people import people
from shadewright.workflows.studio import found_studio

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("noon")]
NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
PHONE = "192.168.1.20"


@pytest.fixture
def noon(time_machine: TimeMachineFixture) -> None:
    time_machine.move_to(NOON, tick=False)


def wrong(code: FreshCode) -> str:
    return f"{(int(code.digits) + 1) % 10**6:06d}"


def try_wrong(code: FreshCode, *, address: str = PHONE) -> None:
    with pytest.raises(ConflictError, match="not the code at the desk"):
        pair(code=wrong(code), name="Nobody", address=address)


def guess_on_and_on(clock: TimeMachineFixture, *, times: int) -> None:
    """Guess patiently, from one address after the other."""
    for number in range(times):
        clock.shift(timedelta(seconds=60))
        try_wrong(make_code(by=None), address=f"192.168.1.{number}")


def test_a_code_lets_a_phone_in_and_its_token_keeps_it_in() -> None:
    code = make_code(by=None)
    token = pair(code=code.digits, name="  Ines’  phone ", address=PHONE)
    device = device_of(token)
    assert device is not None
    assert (device.name, device.paired_at, device.paired_by) == (
        "Ines’ phone",
        NOON,
        "",
    )
    assert devices() == (device,)


def test_a_code_is_six_digits_and_lasts_five_minutes() -> None:
    code = make_code(by=None)
    assert re.fullmatch(r"\d{6}", code.digits)
    assert code.expires_at == NOON + timedelta(minutes=5)
    typed = f" {code.digits[:3]}-{code.digits[3:]} "
    assert pair(code=typed, name="Tam", address=PHONE)


def test_who_made_the_code_stands_by_the_phone() -> None:
    found_studio(name="Fell Lane", person="Ines")
    code = make_code(by=people()[0].id)
    pair(code=code.digits, name="Tam’s phone", address=PHONE)
    assert [one.paired_by for one in devices()] == ["Ines"]


def test_neither_code_nor_token_stands_in_the_database() -> None:
    code = make_code(by=None)
    token = pair(code=code.digits, name="Tam", address=PHONE)
    kept = f"{PairingCode.objects.values().get()}{Device.objects.values().get()}"
    assert code.digits not in re.findall(r"\d+", kept)
    assert token not in kept
    assert len(token) >= 43  # 256 bits in base 64


def test_a_code_lets_in_one_phone_only() -> None:
    code = make_code(by=None)
    pair(code=code.digits, name="Tam", address=PHONE)
    with pytest.raises(ConflictError):
        pair(code=code.digits, name="Another", address=PHONE)


def test_a_code_is_good_until_its_time_is_over(
    time_machine: TimeMachineFixture,
) -> None:
    first = make_code(by=None)
    time_machine.shift(timedelta(minutes=4, seconds=59))
    pair(code=first.digits, name="In time", address=PHONE)
    second = make_code(by=None)
    time_machine.shift(timedelta(minutes=5))
    with pytest.raises(ConflictError):
        pair(code=second.digits, name="Late", address=PHONE)


def test_a_new_code_ends_the_one_before_it() -> None:
    before = make_code(by=None)
    while make_code(by=None).digits == before.digits:  # one in a million
        pass
    with pytest.raises(ConflictError):
        pair(code=before.digits, name="Tam", address=PHONE)


@pytest.mark.parametrize("typed", ["", "12345", "٣٤٥٦٧٨", "1 OR 1", "0" * 99])
def test_what_is_no_code_is_a_wrong_code(typed: str) -> None:
    make_code(by=None)
    with pytest.raises(ConflictError):
        pair(code=typed, name="Tam", address=PHONE)
    assert PairingTry.objects.count() == 1


def test_a_wrong_code_counts_even_when_none_is_open() -> None:
    with pytest.raises(ConflictError):
        pair(code="123456", name="Tam", address=PHONE)
    assert PairingTry.objects.count() == 1


@pytest.mark.parametrize("name", ["", "   "])
def test_a_phone_needs_a_name(name: str) -> None:
    code = make_code(by=None)
    with pytest.raises(MissingError):
        pair(code=code.digits, name=name, address=PHONE)
    assert pair(code=code.digits, name="Tam", address=PHONE)


def test_a_name_in_use_is_refused_and_the_code_stays_good() -> None:
    pair(code=make_code(by=None).digits, name="Tam", address=PHONE)
    code = make_code(by=None)
    with pytest.raises(ConflictError, match="a phone called TAM already") as caught:
        pair(code=code.digits, name="TAM", address=PHONE)
    assert caught.value.argument == "name"
    assert pair(code=code.digits, name="Ines", address=PHONE)


def test_each_wrong_code_makes_its_address_wait_twice_as_long(
    time_machine: TimeMachineFixture,
) -> None:
    code = make_code(by=None)
    for wait in (2, 4, 8, 16):
        try_wrong(code)
        time_machine.shift(timedelta(seconds=wait - 1))
        with pytest.raises(TooManyTriesError) as caught:
            pair(code=code.digits, name="Tam", address=PHONE)
        assert caught.value.wait_s == 1
        time_machine.shift(timedelta(seconds=1))
    assert pair(code=code.digits, name="Tam", address=PHONE)


def test_asking_too_soon_makes_the_wait_no_longer() -> None:
    code = make_code(by=None)
    try_wrong(code)
    for _ in range(30):
        with pytest.raises(TooManyTriesError, match="Try again in 2 seconds"):
            pair(code=wrong(code), name="Tam", address=PHONE)
    assert PairingTry.objects.count() == 1


def test_many_addresses_together_are_slowed_too(
    time_machine: TimeMachineFixture,
) -> None:
    code = make_code(by=None)
    try_wrong(code, address="192.168.1.1")
    time_machine.shift(timedelta(seconds=1))
    try_wrong(code, address="192.168.1.2")
    with pytest.raises(TooManyTriesError) as caught:
        pair(code=wrong(code), name="Tam", address="192.168.1.3")
    assert caught.value.wait_s == 2


def test_five_wrong_tries_end_a_code(time_machine: TimeMachineFixture) -> None:
    code = make_code(by=None)
    for number in range(5):
        try_wrong(code, address=f"192.168.1.{number}")
        time_machine.shift(timedelta(seconds=30))
    with pytest.raises(ConflictError):
        pair(code=code.digits, name="Tam", address=PHONE)


def test_twenty_wrong_codes_in_an_hour_lock_pairing_until_the_desk_opens_it(
    time_machine: TimeMachineFixture,
) -> None:
    guess_on_and_on(time_machine, times=19)
    code = make_code(by=None)
    assert not wrong_codes.is_locked()
    time_machine.shift(timedelta(seconds=60))
    try_wrong(code)
    time_machine.shift(timedelta(hours=9))
    with pytest.raises(TooManyTriesError, match="open pairing again"):
        pair(code=code.digits, name="Tam", address=PHONE)
    with pytest.raises(TooManyTriesError):
        make_code(by=None)
    wrong_codes.forget_wrong_codes()
    assert pair(code=make_code(by=None).digits, name="Tam", address=PHONE)


def test_twenty_wrong_codes_in_more_than_an_hour_lock_nothing(
    time_machine: TimeMachineFixture,
) -> None:
    guess_on_and_on(time_machine, times=10)
    time_machine.shift(timedelta(hours=1))
    guess_on_and_on(time_machine, times=10)
    assert not wrong_codes.is_locked()
    time_machine.shift(timedelta(days=2))
    make_code(by=None)
    assert PairingTry.objects.count() == 0


def test_a_removed_phone_is_out_and_its_name_is_free() -> None:
    token = pair(code=make_code(by=None).digits, name="Tam", address=PHONE)
    other = pair(code=make_code(by=None).digits, name="Ines", address=PHONE)
    tam = next(one for one in devices() if one.name == "Tam")
    revoke(tam.id)
    assert device_of(token) is None
    assert device_of(other) is not None
    with pytest.raises(NotFoundError, match="removed already"):
        revoke(tam.id)
    assert pair(code=make_code(by=None).digits, name="Tam", address=PHONE)
    assert device_of(token) is None


@pytest.mark.parametrize("token", ["", "x", "\x00", "é" * 50])
def test_no_other_token_lets_anybody_in(token: str) -> None:
    pair(code=make_code(by=None).digits, name="Tam", address=PHONE)
    assert device_of(token) is None


def test_when_a_phone_was_seen_is_written_once_a_minute(
    time_machine: TimeMachineFixture,
) -> None:
    token = pair(code=make_code(by=None).digits, name="Tam", address=PHONE)
    for seconds, seen in ((59, 0), (2, 61), (30, 61)):
        time_machine.shift(timedelta(seconds=seconds))
        device_of(token)
        assert devices()[0].last_seen_at == NOON + timedelta(seconds=seen)


@pytest.mark.django_db
def test_a_name_too_long_for_the_list_is_refused() -> None:
    code = make_code(by=None)
    with pytest.raises(OutOfRangeError, match="at most 40 signs long; got 41"):
        pair(code=code.digits, name="T" * 41, address=PHONE)


@pytest.mark.django_db(transaction=True)
def test_a_backup_carries_the_phones() -> None:
    found_studio(name="Fell Lane", person="Ines")
    token = pair(code=make_code(by=None).digits, name="Tam", address=PHONE)
    copy = opening.backup()
    revoke(devices()[0].id)
    opening.restore(copy)
    assert device_of(token) is not None


@pytest.mark.django_db(transaction=True)
def test_of_phones_that_send_one_code_at_once_one_is_let_in() -> None:
    code = make_code(by=None)

    def ask(number: int) -> bool:
        try:
            pair(
                code=code.digits, name=f"Phone {number}", address=f"192.168.1.{number}"
            )
        except (ConflictError, TooManyTriesError):
            return False
        finally:
            connection.close()
        return True

    with ThreadPoolExecutor(6) as pool:
        assert sum(pool.map(ask, range(6))) == 1
    assert len(devices()) == 1
