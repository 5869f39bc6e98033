"""A mix written down as a recipe."""

from collections.abc import Mapping

from django import forms
from django.http import HttpRequest

from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.mixes.asking import MixAsked, mix_asked
from shadewright.web.mixes.showing import recipe_words
from shadewright.web.targets import NAME
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.shades.mixing_page import MixNow
from shadewright.workflows.shades.saving import ToSave, save_found
from shadewright.workflows.stamps import stamp_now


class RowForm(DeedForm):
    """The name under which something is kept."""

    called = forms.CharField(label="The name", max_length=60)

    @property
    def fault(self) -> str:
        """What is wrong with it, in one line."""
        said = [*self.errors.get("called", ()), *self.non_field_errors()]
        return " ".join(map(str, said))


class SaveForm(RowForm):
    """The name under which a mix is kept; without one it is named after its dyes."""

    called = forms.CharField(label="The name", max_length=60, required=False)

    def save(self, request: HttpRequest, asked: MixAsked, now: MixNow) -> Version:
        """Write the recipe, and which colour it is for."""
        sent = self.cleaned_data
        found = ToSave(
            doses=asked.mix,
            base_id=now.base.id,
            wanted=asked.wanted,
            name=sent["called"] or recipe_words(now)[:60],
            batch_g=asked.yarn_g,
        )
        stamp = stamp_now(by=person_id(request), deed=sent["deed"])
        return save_found(found, stamp=stamp)


def save_asked(sent: Mapping[str, str]) -> MixAsked:
    """Read the mix that goes with the name."""
    said = {key: value for key, value in sent.items() if key != NAME}
    return mix_asked(said | {NAME: sent.get("wanted_name", "")})
