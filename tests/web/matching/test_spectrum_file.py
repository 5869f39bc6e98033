"""A spectrum out of the meter's file, in a real browser."""

from playwright.sync_api import FilePayload, Page, expect
from pytest_django.live_server_helper import LiveServer

from tests.workflows.shades.studios import Fitted

NM = range(400, 701, 10)


def test_a_file_is_put_into_the_field(
    phone: Page, live_server: LiveServer, studio: Fitted
) -> None:
    phone.goto(f"{live_server.url}/shades/find/?base={studio.base.pk}")
    phone.get_by_label("A spectrum", exact=True).check()
    text = "nm,R\n" + "".join(f"{nm},{nm / 1000}\n" for nm in NM)
    file = phone.locator("[data-text-into]")
    file.set_input_files(csv(text.encode()))
    expect(phone.get_by_text("moss.csv stands in the field.")).to_be_visible()
    expect(phone.locator("[name=spectrum]")).to_have_value(text)
    file.set_input_files(csv(b"1" * 20_001))
    expect(phone.get_by_text("The file is too long for one colour.")).to_be_visible()
    expect(phone.locator("[name=spectrum]")).to_have_value(text)
    phone.get_by_role("button", name="Find", exact=True).click()
    expect(phone.locator(".answer").first).to_be_visible()


def csv(content: bytes) -> FilePayload:
    return {"name": "moss.csv", "mimeType": "text/csv", "buffer": content}
