"""Where an advice is followed: the making of a stock filled in, the page of a tool."""

from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.baths.levers.ways import Stock
from shadewright.core.quantities import number_text


def making_address(dye_id: int, *, strength_percent: float, volume_ml: float) -> str:
    """Return the page that makes a stock, filled in."""
    asked = {
        "dye": dye_id,
        "strength_percent": number_text(strength_percent, digits=4),
        "volume_ml": number_text(volume_ml, digits=4),
    }
    return f"{reverse('plan-stock')}?{urlencode(asked)}"


def thinning_address(stock: Stock) -> str:
    """Return the page that makes a weaker bottle from one, filled in as advised."""
    tool, code = stock.thinned_with, stock.code
    asked = {
        "want_percent": number_text(stock.strength.value, digits=4),
        "volume_ml": number_text(stock.usable_ml, digits=4),
        **({} if tool is None else {"tool_id": _number(tool.key)}),
    }
    return f"{reverse('bottle-act', args=[code, 'dilute'])}?{urlencode(asked)}"


def tool_address(key: str) -> str:
    """Return the page of a tool by what its errors are kept under."""
    return reverse("tool", args=[_number(key)])


def _number(key: str) -> int:
    return int(key.rpartition(" ")[2])
