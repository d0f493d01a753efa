"""The customer's path for the tests that walk it: its screens by their headings, what is typed, and a walk by press or by key."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from playwright.sync_api import Locator, Page, expect

from tests.browser.helpers import PATIENCE, at

LENGTHS = ("625", "591", "600", "496", "506")
TITLES = (
    "What kind of riding do you do?", "What do you weigh in full kit?", "What does the bike weigh?", "How far can the rear wheel move?",
    "Is it the rear spring that the bike was sold with?", "Get ready: a tape, a helper and five minutes",
    "Wheel off the ground: how far is it from the axle to the dot?", "Bike alone, pushed down: how far is it from the axle to the dot?",
    "Bike alone, lifted: how far is it from the axle to the dot?", "You on the bike, pushed down: how far is it from the axle to the dot?",
    "You on the bike, lifted: how far is it from the axle to the dot?",
)  # fmt: skip
TYPED = ("86", "", "", "", "", *LENGTHS)  # on the screens after the first; nothing where one is skipped

FRONT_LENGTHS = ("700", "662", "670", "612", "622")
AXLE = "how far is it along the leg, from the axle to the dot?"
FRONT_TITLES = (
    "How far can the fork move?", "Are they the fork springs that the bike was sold with?", "Get ready for the front: the same tape, the same helper",
    f"Front wheel off the ground: {AXLE}", f"Bike alone, front pushed down: {AXLE}", f"Bike alone, front lifted: {AXLE}",
    f"You on the bike, front pushed down: {AXLE}", f"You on the bike, front lifted: {AXLE}",
)  # fmt: skip
FRONT_TYPED = ("", "", "", *FRONT_LENGTHS)

ONWARD = re.compile("^(Next|Skip|See the verdict)")


def title(page: Page, name: str) -> None:
    """Wait for a screen by its heading."""
    expect(page.get_by_role("heading", name=name, exact=True)).to_be_visible(timeout=PATIENCE)


def tap(locator: Locator) -> None:
    locator.tap()


def click(locator: Locator) -> None:
    locator.click()


def walk(page: Page, press: Callable[[Locator], object], lengths: Iterable[str] = LENGTHS, upto: str = "verdict") -> None:
    """From the door to the verdict, pressing by name: every control is found by its role and name, as a screen reader has it."""
    if page.locator(".at-mybike").count() == 0:
        press(at(page, "door").get_by_role("link", name=re.compile("^Check my bike")))
    title(page, TITLES[0])
    press(page.get_by_role("radio", name="Enduro", exact=True))
    press(page.get_by_role("button", name=ONWARD))
    _answer(page, press, TITLES[1:], (*TYPED[: -len(LENGTHS)], *lengths), upto)


def walk_front(page: Page, press: Callable[[Locator], object], upto: str = "verdict") -> None:
    """From the rear's verdict to the front's, as `walk`."""
    press(page.get_by_role("button", name="Check the front too: five more readings"))
    _answer(page, press, FRONT_TITLES, FRONT_TYPED, upto)


def _answer(page: Page, press: Callable[[Locator], object], titles: Iterable[str], typed: Iterable[str], upto: str) -> None:
    for name, text in zip(titles, typed, strict=True):
        title(page, name)
        if name == upto:
            return
        if text:
            page.get_by_role("textbox", name=name).fill(text)
        press(page.get_by_role("button", name=ONWARD))
    expect(page.locator("[data-finding]")).to_be_visible(timeout=PATIENCE)


def expect_front_verdict(page: Page) -> None:
    """The verdict on the fork, of the lengths that were typed."""
    expect(page.get_by_role("heading", level=2)).to_contain_text("fork springs", timeout=PATIENCE)
    for read in ("read 38 and 30", "read 88 and 78"):
        expect(page.locator("[data-finding]")).to_contain_text(read)


def tab_to(page: Page, what: str, most: int = 25) -> None:
    """Tab on to what says so; where the hand is must be seen."""
    for _ in range(most):
        page.keyboard.press("Tab")
        said = "(what) => new RegExp(what).test(document.activeElement.textContent + ' ' + (document.activeElement.value ?? ''))"
        if page.evaluate(said, what):
            outline = "getComputedStyle(document.activeElement.closest('label') ?? document.activeElement).outlineStyle"
            assert page.evaluate(outline) == "solid", "the focus is seen"
            return
    raise AssertionError(f"{what} is not reached within {most} stops")


def keyed(page: Page, titles: Iterable[str], typed: Iterable[str]) -> None:
    """Screen after screen by keyboard alone."""
    for name, text in zip(titles, typed, strict=True):
        title(page, name)
        # The heading of each screen takes the focus, so that it is read first; the field is the next stop.
        expect(page.get_by_role("heading", name=name)).to_be_focused()
        if text:
            page.keyboard.press("Tab")
            expect(page.get_by_role("textbox", name=name)).to_be_focused()
            page.keyboard.type(text)
        else:
            tab_to(page, "^(Next|Skip)", 8)
        page.keyboard.press("Enter")
