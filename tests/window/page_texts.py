#!/usr/bin/env python3
"""Holds what a browser made of the record's page against the record's JSON: every text that JSON
shows of a table stands in a cell of the page, under the heading that JSON gives it.
Usage: page_texts.py RECORD.json DOM.html"""
import html.parser
import json
import re
import sys


def plain(text):
    return re.sub(r"\s+", " ", text).strip()


class Page(html.parser.HTMLParser):
    """Tables of a page: a list of (headings, rows)."""

    def __init__(self):
        super().__init__()
        self.tables, self.row, self.cell, self.text, self.photos = [], None, None, [], []

    def handle_starttag(self, tag, attrs):
        if tag == "table":
            self.tables.append(([], []))
        elif tag == "tr":
            self.row = []
        elif tag in ("td", "th"):
            self.cell = ""
        elif tag == "img":
            self.photos.append(dict(attrs))

    def handle_endtag(self, tag):
        if tag in ("td", "th") and self.cell is not None:
            (self.tables[-1][0] if tag == "th" else self.row).append(plain(self.cell))
            self.cell = None
        elif tag == "tr" and self.row:
            self.tables[-1][1].append(self.row)

    def handle_data(self, data):
        self.text.append(data)
        if self.cell is not None:
            self.cell += data


def heading(column):
    return plain(column["heading"] + (f" ({column['unit']})" if column["unit"] else ""))


def main():
    record = json.load(open(sys.argv[1], encoding="utf-8"))
    page = Page()
    page.feed(open(sys.argv[2], encoding="utf-8").read())
    text = plain(" ".join(page.text))
    found, lacking = 0, []
    for key, table in record["tables"].items():
        names = {c["shown"]: heading(c) for c in table["columns"]}
        for row in record[key]:
            shown = {k: plain(v) for k, v in row["shown"].items()}
            pour = shown.pop("pour", None)
            if pour is not None and pour not in text:
                lacking.append((key, "pour", pour))
            if key == "edition":  # told in a sentence
                for name, value in shown.items():
                    found += value in text
                    if value not in text:
                        lacking.append((key, name, value))
                continue
            wanted = {names[k]: v for k, v in shown.items()}
            if any(
                all(v in (c for h, c in zip(heads, cells) if h == k) for k, v in wanted.items())
                for heads, rows in page.tables
                for cells in rows
                if wanted.keys() <= set(heads)
            ):
                found += len(wanted)
            else:
                lacking.append((key, "row", wanted))
    for one in lacking:
        print("not in the page:", *one)
    print(f"{found} texts of the record stand in the page, {len(lacking)} do not")
    sys.exit(1 if lacking or not found else 0)


main()
