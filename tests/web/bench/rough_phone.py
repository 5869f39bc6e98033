"""A phone in a real browser whose connection is cut and whose page is loaded anew.

What its page keeps as a tap is written down beside it, in the same storage, by a few
lines of script that run before the page's own: so the test knows of every tap that was
ever kept, also of one whose page was gone a moment later.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from random import Random
from typing import Any

from playwright.sync_api import Error, Locator, Page, Request, Route, expect
from playwright.sync_api import TimeoutError as NotInTimeError

KEEPS_A_DIARY = """() => {
  const put = Storage.prototype.setItem;
  Storage.prototype.setItem = function (name, value) {
    put.call(this, name, value);
    if (!name.startsWith("shadewright.studio.tap.")) return;
    const made = JSON.parse(this.getItem("made") ?? "[]");
    put.call(this, "made", JSON.stringify([...made, JSON.parse(value)]));
  };
}"""
SHORT_MS, LONG_MS = 700, 20_000
TAPS = "form[data-tap] button"


@dataclass
class RoughPhone:
    """One phone: its page, its luck, and how the network treats what it sends."""

    page: Page
    home: str
    baths: list[str]
    luck: Random
    fates: Random
    kill: Callable[[], None]
    is_rough: bool = True
    is_cut: bool = False
    kills_next: bool = False
    cuts: dict[str, int] = field(default_factory=dict)
    plain: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Let every page keep the diary, and stand between it and the server."""
        self.page.add_init_script(f"({KEEPS_A_DIARY})()")
        self.page.route("**/bench/taps/", self._send)
        self.page.on("request", self._note_plain)

    def act(self, *, is_up: bool) -> None:
        """Do one thing that a dyer does, whatever comes of it."""
        if not self.page.url.startswith(self.home):
            self._come_back()
            return
        acts: dict[Callable[[], None], float] = {
            self.done: 9,
            self.take_back: 2,
            self.say_it_is_blotchy: 1,
            self.pour_more: 1,
            self.cut_or_mend: 3,
            self.reload: 0.5,
        }
        if is_up and not self.is_cut:
            ways = {self.go_on: 3, self.go_elsewhere: 2, self.see_the_pots: 1}
            acts |= {self.reload: 3, **ways}
        if self.page.url.endswith("/bench/"):
            acts = {self.go_on: 1}
        (act,) = self.luck.choices(list(acts), list(acts.values()))
        act()

    def _come_back(self) -> None:
        if self.is_cut:
            self.cut_or_mend()
        else:
            self.go_elsewhere()

    def open(self, bath: str) -> None:
        """Open a bath; nothing comes of it where there is no connection."""
        self._load(lambda: self.page.goto(f"{self.home}/bench/{bath}/?view=main"))

    def done(self) -> None:
        """Tap what the step at hand offers first."""
        self._tap(self.page.locator(f"#live {TAPS}.first, #live [data-open=main]"))

    def take_back(self) -> None:
        """Tap Undo."""
        self._tap(self.page.locator("#live [data-undo=last] button:enabled"))

    def say_it_is_blotchy(self) -> None:
        """Tap Problem, then the one that needs no words."""
        if self._tap(self.page.locator("#live [data-open=problem]")):
            self._tap(self.page.locator(f"#live {TAPS}").get_by_text("Blotchy"))

    def pour_more(self) -> None:
        """Tap Other, then the first of what is usual there, if anything is."""
        if self._tap(self.page.locator("#live .bench-keys [data-open=other]")):
            self._tap(self.page.locator(f"#live [data-view=other] {TAPS}"))

    def go_on(self) -> None:
        """Go to what is next at another pot, by the bar or from the list."""
        way = "#live [data-next], .pots .button"
        self._load(lambda: self._tap(self.page.locator(way)))

    def go_elsewhere(self) -> None:
        """Open any bath."""
        self.open(self.luck.choice(self.baths))

    def see_the_pots(self) -> None:
        """Go to the list of pots."""
        self._load(
            lambda: self._tap(self.page.locator("#live .bench-head a[href]").last)
        )

    def reload(self) -> None:
        """Load the page anew; what waits on the phone waits on."""
        self._load(self.page.reload)

    def cut_or_mend(self) -> None:
        """Lose the connection, or find it again."""
        self.is_cut = not self.is_cut
        self.page.context.set_offline(self.is_cut)
        self._count("cut" if self.is_cut else "mended")

    def calm(self) -> None:
        """Let the network be good from now on."""
        self.is_rough = False
        if self.is_cut:
            self.cut_or_mend()

    def made(self) -> list[dict[str, Any]]:
        """Return every tap that any page of this phone ever kept, oldest first."""
        taps = "JSON.parse(localStorage.getItem('made') ?? '[]')"
        return list(self.page.evaluate(taps))

    def _note_plain(self, request: Request) -> None:
        """Note a key that sent a plain form: none may while scripts run."""
        if request.method == "POST" and request.url.endswith(("/tap/", "/undo/")):
            self.plain.append(request.url)

    def expect_all_sent(self) -> None:
        """Wait until nothing waits on the phone."""
        unsent = self.page.locator("#live [data-unsent]")
        expect(unsent).to_have_text("", timeout=LONG_MS)

    def _tap(self, keys: Locator) -> bool:
        try:
            keys.locator("visible=true").first.click(timeout=SHORT_MS)
        except NotInTimeError:
            return False
        return True

    def _load(self, way: Callable[[], object]) -> None:
        try:
            way()
            self.page.wait_for_load_state("domcontentloaded", timeout=LONG_MS)
        except Error:
            self._count("not loaded")

    def _send(self, route: Route) -> None:
        if self.is_cut:
            route.abort("internetdisconnected")
        elif not self.is_rough:
            route.continue_()
        elif self.kills_next:
            self.kills_next = False
            route.continue_()
            self.kill()
        else:
            self._send_roughly(route)

    def _send_roughly(self, route: Route) -> None:
        fate = self.fates.random()
        if fate < 0.2:
            self._count("nothing left")
            route.abort("connectionfailed")
        elif fate < 0.45:
            self._count("answer lost")
            try:
                route.fetch(timeout=LONG_MS)
            except Error:
                self._count("no answer")
            route.abort("connectionreset")
        else:
            route.continue_()

    def _count(self, what: str) -> None:
        self.cuts[what] = self.cuts.get(what, 0) + 1
