"""The first page and the measuring page speak the reader's language, and what they ask of the API.

Source of `lang` and `hreflang`: the HTML standard; of Vary and Content-Language: RFC 9110.
"""

from __future__ import annotations

import ast
import io
import re
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path

import pypdfium2
import pytest
from asking import refused
from babel.messages.pofile import read_po

import drafting
from drafting.body import MEASURES
from drafting.garments import GARMENTS
from drafting.language import DOUBTFUL, known_page_text
from service.languages import LANGUAGES, OWN_NAMES
from service.page_words import FORM, MARKED, page_frame

WHOLE = ("fr", "de")
OTHERS = tuple(name for name in LANGUAGES if name != "en")
PAGES = ("/", "/measuring", "/measuring?garment=bodice")
ASSETS = ("landing.html", "garment.html", "measuring.html")
SENTENCE = 3
"""So many words in a row that two languages have in common are one language."""


class Texts(HTMLParser):
    """The texts of a page that a reader sees or hears, each with the language that it is in."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.open: list[tuple[str, str]] = [("", "")]
        self.found: list[tuple[str, str]] = []
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        named = dict(attrs)
        language = named.get("lang", self.open[-1][1])
        self.found += [(language, named[a]) for a in ("alt", "aria-label") if named.get(a)]
        if tag not in ("meta", "link", "img", "input", "br"):
            self.open.append((tag, language))

    def handle_endtag(self, tag):
        while self.open.pop()[0] != tag:
            pass

    def handle_data(self, data):
        if data.strip() and not {"pre", "code"} & {tag for tag, _ in self.open}:
            self.found.append((self.open[-1][1], " ".join(data.split()).lstrip(". ")))


def asked(path, language):
    return path + ("&" if "?" in path else "?") + f"language={language}"


def words(text):
    return re.findall(r"[^\W\d_]+", text)


def sentences(page, language):
    """The longer texts of a page that say to be in a language."""
    return {t for said, t in Texts(page).found if said == language and len(words(t)) >= SENTENCE}


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("language", WHOLE)
def test_no_english_sentence_is_left_on_a_page(service, path, language):
    english = sentences(service.get(path).text, "en")
    assert len(english) > 30
    page = service.get(asked(path, language)).text
    assert len(sentences(page, language)) > 30
    assert sentences(page, language) & english == set()
    assert sentences(page, "en") == set()


def test_that_test_sees_a_sentence_that_was_left(service):
    english = service.get("/measuring").text
    page = service.get("/measuring?language=de").text
    left = "Write the date beside it. Bodies change, and a pattern does not."
    spoiled = page.replace("Den Tag dazuschreiben. Körper ändern sich, ein Schnitt nicht.", left)
    assert sentences(spoiled, "de") & sentences(english, "en") == {left}


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("language", ["es", "it", "pt"])
def test_what_a_page_cannot_say_in_a_language_is_marked_as_english(service, path, language):
    english = sentences(service.get(path).text, "en")
    page = service.get(asked(path, language)).text
    assert sentences(page, language) & english == set()
    assert sentences(page, "en") <= english
    assert len(sentences(page, language)) > 15


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("language", LANGUAGES)
def test_a_page_says_which_language_it_is_in_and_leads_to_the_others(service, path, language):
    answer = service.get(path, Accept_Language=f"{language}-XX, ja;q=0.5")
    assert f'<html lang="{language}">' in answer.text
    assert answer.headers["content-language"] == language
    assert "Accept-Language" in answer.headers["vary"]
    assert answer.text == service.get(asked(path, language), Accept_Language="ja").text
    for other, name in OWN_NAMES.items():
        link = re.search(
            rf'<a href="([^"]+)" hreflang="{other}" lang="{other}"[^>]*>{name}</a>', answer.text
        )
        address = answer.request.url.join(link[1].replace("&amp;", "&"))
        there = service.get(address.raw_path.decode())
        assert f'<html lang="{other}">' in there.text
        assert there.text.count('aria-current="true"') == 1
        assert ("bodice" in path) == ("garment=bodice" in str(address))


def test_each_language_of_a_page_has_its_own_tag(service):
    tags = {}
    for language in LANGUAGES:
        answer = service.get("/", Accept_Language=language)
        tags[language] = answer.headers["etag"]
        again = service.get("/", Accept_Language=language, If_None_Match=answer.headers["etag"])
        assert again.status_code == 304
        assert "Accept-Language" in again.headers["vary"]
    assert len(set(tags.values())) == len(LANGUAGES)
    french = service.get("/", Accept_Language="fr", If_None_Match=tags["de"])
    assert french.status_code == 200


def test_the_address_goes_before_the_header_and_an_unknown_language_is_refused(service):
    for path in ("/", "/measuring", "/v1/garments", "/v1/garments/shirt", "/v1/measurements"):
        told = service.get(asked(path, "it"), Accept_Language="de")
        assert told.headers["content-language"] == "it"
        assert "pt" in refused(service.get(asked(path, "xx")), 404, "not-found")["detail"]


@pytest.mark.parametrize("language", OTHERS)
def test_every_short_text_of_the_pages_is_in_every_catalogue(language):
    """Long ones, which tell how to measure, only French and German have."""
    marked = [m["text"] for name in ASSETS for m in MARKED.finditer(page_source(name))]
    texts = {t for t in [*marked, *FORM.values()] if language in WHOLE or not told_at_length(t)}
    assert len(texts) > 60
    assert {t for t in texts if known_page_text(t, language) is None} == set()
    for text in texts:
        assert gaps(known_page_text(text, language)) == gaps(text), text


def test_french_keeps_its_double_signs_on_the_line():
    """Source: the usage of French typography, a space that does not break before : ; ? and !"""
    with files("drafting.language").joinpath("fr_pages.po").open("rb") as file:
        said = [str(message.string) for message in read_po(file) if message.id]
    assert sum("\N{NO-BREAK SPACE}:" in text for text in said) > 20
    assert [text for text in said if re.search(r" [:;?!]", text)] == []


def page_source(name):
    assert "[[" not in page_frame(name, "en").template
    return (files("service") / "assets" / name).read_text("utf-8")


def told_at_length(text):
    return f"<li>[[{text}]]" in page_source("measuring.html")


def gaps(text):
    return sorted(re.findall(r"\{\w+\}|</?\w+>", text))


ALIKE = {
    "de": {"mini", "shorts", "normal", "V"},
    "fr": {"culottes", "mini", "short", "relaxed", "large", "centre"},
}
"""Words of the trade that are the same in English, beside numbers."""


@pytest.mark.parametrize("kind", GARMENTS)
@pytest.mark.parametrize("language", WHOLE)
def test_a_garment_and_what_the_form_offers_is_told_in_the_language(service, kind, language):
    english, told = (
        service.get(asked(f"/v1/garments/{kind}", name)).json() for name in ("en", language)
    )
    assert told["summary"] != english["summary"]
    assert set(told["sources"]) & set(english["sources"]) == set()
    offered = {
        name
        for name, option in told["options"]["properties"].items()
        if told["choices"].get(name) or "boolean" in str(option)
    }
    for name in offered:
        option, before = (each["options"]["properties"][name] for each in (told, english))
        assert option["description"] != before["description"], name
        assert option["title"] != before["title"] or len(words(option["title"])) == 1, name
        values = told["choices"].get(name, {})
        assert set(values) == set(english["choices"].get(name, {}))
        same = {word for value, word in values.items() if word == english["choices"][name][value]}
        assert {word for word in same if not word.isdigit()} <= ALIKE[language]


def test_every_value_of_an_option_has_a_word_that_is_no_code(service):
    for kind in GARMENTS:
        told = service.get(f"/v1/garments/{kind}").json()
        for name, values in told["choices"].items():
            schema = told["options"]["properties"][name]
            listed = [schema, *schema.get("anyOf", [])]
            enum = {str(v) for each in listed for v in each.get("enum", [])}
            assert enum <= set(values)
            assert not any("_" in word for word in values.values())


@pytest.mark.parametrize("language", WHOLE)
def test_every_measure_says_how_it_is_taken(service, language):
    english, told = (
        {m["name"]: m for m in service.get(asked("/v1/measurements", name)).json()["measurements"]}
        for name in ("en", language)
    )
    assert set(told) == set(MEASURES)
    for name, measure in told.items():
        assert measure["how"] != english[name]["how"]
        assert measure["possible"] == english[name]["possible"]


@pytest.mark.parametrize("language", WHOLE)
def test_the_blank_form_is_in_the_language_too(service, language):
    answer = service.get(f"/measuring/form.pdf?garment=trousers&language={language}")
    assert answer.headers["content-language"] == language
    with pypdfium2.PdfDocument(io.BytesIO(answer.content)) as pdf:
        text = " ".join(p.get_textpage().get_text_range() for p in pdf)
    spoken = {
        "fr": ("Tour de taille", "gauche", "Pantalon"),
        "de": ("Taillenumfang", "links", "Hose"),
    }
    assert all(word in text for word in spoken[language])
    left = re.sub("|".join(map(re.escape, DOUBTFUL[language])), "", text)
    for english in ("Measure", "Round", "Level", "helper", "left:", "Unit:", "the "):
        assert english not in left


@pytest.mark.parametrize(
    ("measure", "value", "told"),
    [
        ("waist_girth", "wide", {"fr": "longueur", "de": "Länge"}),
        ("waist_girth", 5000, {"fr": "Tour de taille", "de": "Taillenumfang"}),
        ("shoulder_slope", -4.9e16, {"fr": "-4.9e+16", "de": "-4.9e+16"}),
        ("waist", 74, {"fr": "mesure", "de": "Maß"}),
        ("hip_girth", None, {"fr": "Tour de", "de": "Hüftumfang"}),
    ],
)
@pytest.mark.parametrize("language", WHOLE)
def test_a_refused_order_says_why_in_the_language(service, language, measure, value, told):
    order = {
        "measurements": {"waist_girth": 74, "hip_girth": 101, "stature": 168, measure: value},
        "garment": {"kind": "trousers"},
        "output": {"language": language},
    }
    answer = service.order(order)
    problem = refused(answer, 422, "invalid-order")
    assert answer.headers["content-language"] == language
    assert told[language] in problem["errors"][0]["detail"]
    assert not re.search(r"\b(the|Send|There)\b", problem["errors"][0]["detail"])
    assert (
        problem["title"]
        == {
            "fr": "La commande doit être changée",
            "de": "Der Auftrag muss geändert werden",
        }[language]
    )


def reasons():
    """Why options clash, read out of the chapters themselves."""
    for file in sorted(Path(drafting.__file__).parent.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Clash":
                named = [k.value for k in node.keywords if k.arg == "why"]
                yield ast.literal_eval((named or node.args[4:])[0])


@pytest.mark.parametrize("language", WHOLE)
def test_why_options_clash_is_told_in_the_language(language):
    whys = set(reasons())
    assert len(whys) > 40
    assert {why for why in whys if known_page_text(why, language) is None} == set()


@pytest.mark.parametrize("language", WHOLE)
def test_every_option_has_a_title_in_the_language(service, language):
    for kind in GARMENTS:
        options = service.get(f"/v1/garments/{kind}").json()["options"]["properties"]
        titles = {option["title"] for name, option in options.items() if name != "kind"}
        missing = {t for t in titles if known_page_text(t, language, "option") is None}
        assert missing == set()


def test_two_options_that_clash_are_named_as_the_form_names_them(service):
    order = {
        "measurements": {"waist_girth": 74, "hip_girth": 101, "body_rise": 27, "stature": 168},
        "garment": {"kind": "trousers", "leg": "flared", "turn_ups": 4},
        "output": {"language": "de"},
    }
    error = refused(service.order(order), 422, "invalid-order")["errors"][0]
    assert error["pointer"].startswith("/garment/")
    assert "Aufschläge (4)" in error["detail"]
    assert "Bein (ausgestellt)" in error["detail"]
    assert "zu gebogen" in error["detail"]
    del order["output"]
    english = refused(service.order(order), 422, "invalid-order")["errors"][0]
    assert 'leg "flared"' in english["detail"]
    assert english["code"] == error["code"] == "impossible_option"
