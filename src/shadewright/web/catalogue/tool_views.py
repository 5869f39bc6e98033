"""Check a tool, give it a job, take a job from it."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_POST

from shadewright.errors import NotFoundError, StudioError
from shadewright.web.catalogue.facts import item_page
from shadewright.web.catalogue.kinds import TOOLS
from shadewright.web.catalogue.tool_check_form import WaterForm, WeightForm, check_form
from shadewright.web.catalogue.tool_words import SHORT_JOBS
from shadewright.web.catalogue.views import found
from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.toasts import say
from shadewright.workflows.stamps import Stamp, stamp_now
from shadewright.workflows.tool_checks import check_with_water, check_with_weight
from shadewright.workflows.tools import ToolNow, tool_now
from shadewright.workflows.usual_tools import Job, leave_job_open, set_usual_tools


@require_POST
def check_tool(request: HttpRequest, item_id: int) -> HttpResponse:
    """Write down what a check weight or weighed water showed."""
    tool = tool_now(item_id)
    form = check_form(tool, request.POST)
    if form is None:
        raise NotFoundError(kind="check for", key=tool.name)
    if form.is_valid() and _checked(request, tool, form):
        return _to(item_id)
    page = item_page(TOOLS, found(TOOLS, item_id), check=form)
    return show(request, page, status=422)


@require_POST
def use_tool(request: HttpRequest, item_id: int, job: str) -> HttpResponse:
    """Let a tool do a job from now on."""
    wanted = _job(job)
    set_usual_tools(**{wanted.value: item_id})  # type: ignore[arg-type]
    say(request, f"{tool_now(item_id).name} is for {SHORT_JOBS[wanted]} from now on")
    return _to(item_id)


@require_POST
def leave_tool(request: HttpRequest, item_id: int, job: str) -> HttpResponse:
    """Say of no tool any more that it does this job."""
    wanted = _job(job)
    leave_job_open(wanted)
    say(request, f"No tool is for {SHORT_JOBS[wanted]} now")
    return _to(item_id)


def _checked(request: HttpRequest, tool: ToolNow, form: WeightForm | WaterForm) -> bool:
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
    try:
        _write(tool, form, stamp)
    except StudioError as error:
        form.refuse(error)
        return False
    said = f"{tool.name} checked"
    say(request, said, undo=reverse("undo", args=[stamp.deed]))
    return True


def _write(tool: ToolNow, form: WeightForm | WaterForm, stamp: Stamp) -> None:
    sent = form.cleaned_data
    if isinstance(form, WeightForm):
        check_with_weight(
            tool_id=tool.id,
            nominal_g=sent["nominal_g"],
            tolerance_g=sent["tolerance_g"],
            readings_g=form.readings_g(),
            stamp=stamp,
            note=sent["note"],
        )
        return
    check_with_water(
        tool_id=tool.id,
        nominal_ml=sent["nominal_ml"],
        readings_g=form.readings_g(),
        scale_id=sent["scale_id"],
        temperature_c=sent["temperature_c"],
        stamp=stamp,
        note=sent["note"],
    )


def _job(name: str) -> Job:
    if name.upper() not in Job.__members__:
        raise NotFoundError(kind="job", key=name)
    return Job[name.upper()]


def _to(item_id: int) -> HttpResponse:
    return HttpResponseRedirect(reverse("tool", args=[item_id]))
