"""A lot goes back into a bath: the form of it, and its answer."""

from typing import Any

from django.http import HttpRequest
from django.urls import reverse

from shadewright.errors import StudioError
from shadewright.web.asking import number_of
from shadewright.web.corrections.forms import KeepForm
from shadewright.web.frame import person_id
from shadewright.web.mix_text import mix_of, mix_text
from shadewright.web.toasts import say
from shadewright.workflows.correcting.keeping import (
    CorrectionKind,
    ToKeep,
    keep_correction,
)
from shadewright.workflows.correcting.off_shade import OffShade
from shadewright.workflows.lot_skeins import skeins_of
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.stamps import stamp_now, today


def keep_form(
    off: OffShade, doses: DyeDoses, *, becomes: int | None = None
) -> KeepForm:
    """Return the form, filled in with what is known of the lot."""
    return KeepForm(
        initial={
            "mix": mix_text(doses),
            "becomes": "" if becomes is None else str(becomes),
            "grams": off.fibre_g,
            "skeins": skeins_of(off.number).left,
            "dyed_on": today(),
        }
    )


def kept_address(
    request: HttpRequest,
    form: KeepForm,
    *,
    number: str,
    kind: CorrectionKind,
    foretold: dict[str, Any],
) -> str:
    """Plan the bath and return its address; empty where the form refuses."""
    sent = form.cleaned_data
    try:
        becomes = sent["becomes"]
        wish = ToKeep(
            number=number,
            kind=kind,
            doses=mix_of(sent["mix"]),
            fibre_g=sent["grams"],
            dyed_on=sent["dyed_on"],
            skeins=sent["skeins"],
            pot_id=int(sent["pot"]) if sent["pot"] else None,
            becomes_id=number_of(becomes, kind="recipe", argument="becomes")
            if becomes
            else None,
            foretold=foretold,
        )
        stamp = stamp_now(by=person_id(request), deed=sent["deed"])
        bath = keep_correction(wish, stamp=stamp)
    except StudioError as error:
        form.refuse(error)
        return ""
    said = f"Bath {bath} is planned: lot {number} goes into it"
    say(request, said, undo=reverse("undo", args=[sent["deed"]]))
    return reverse("bath", args=[bath])
