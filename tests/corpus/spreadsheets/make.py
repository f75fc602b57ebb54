#!/usr/bin/env python3
"""Makes the spreadsheets of this folder anew.

    python3 -m venv /tmp/env && /tmp/env/bin/pip install openpyxl xlsxwriter
    apt-get install --no-install-recommends libreoffice-calc
    /tmp/env/bin/python make.py

Three programs write them: openpyxl and xlsxwriter (libraries that write .xlsx),
and LibreOffice Calc without a screen, which reads what was typed as it would be
in an office of the United States, Germany or France, and saves .ods, .xlsx or CSV.
The tests need none of them. What each file is for stands in README.md.
"""
import datetime
import pathlib
import shutil
import subprocess
import tempfile

import openpyxl
import xlsxwriter
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.comments import Comment
from openpyxl.styles import Font, PatternFill

HERE = pathlib.Path(__file__).parent
HEAD = ["unit", "guard", "place", "drop (ft)", "height (in)", "opening (in)"]
ROWS = [
    ["2A", "landing", "landing", 9, 36.5, 3.5],
    ["2B", "landing", "landing", 9, 34.25, 3.875],
]


def book(name, rows, after=None):
    work = openpyxl.Workbook()
    sheet = work.active
    sheet.title = "Flats"
    for row in rows:
        sheet.append(row)
    if after:
        after(work, sheet)
    # the same bytes from the same script, as far as the library lets us
    work.properties.created = work.properties.modified = datetime.datetime(2026, 1, 1)
    work.save(HERE / name)


def plain(name):
    book(name, [HEAD] + ROWS)


def title(name):
    book(name, [["Railings, Alder Court"], ["Round of 8 March 2026"], [], HEAD] + ROWS)


def offset(name):
    def move(work, sheet):
        sheet.insert_rows(1, 4)
        sheet.insert_cols(1, 2)

    book(name, [HEAD] + ROWS, move)


def unit_row(name):
    book(name, [["unit", "guard", "place", "drop", "height", "opening"],
                [None, None, None, "ft", "in", "in"]] + ROWS)


def group_row(name):
    def merge(work, sheet):
        for cells in ("A1:A2", "B1:B2", "C1:D1", "E1:F1"):
            sheet.merge_cells(cells)

    book(name, [["unit", "guard", "Where", None, "Measured (in inches)", None],
                [None, None, "place", "drop (ft)", "height (in)", "opening (in)"]] + ROWS, merge)


def merged_units(name):
    def merge(work, sheet):
        sheet.merge_cells("A2:A3")
        sheet.merge_cells("A4:A5")

    book(name, [HEAD, ["2A", "landing", "landing", 9, 36.5, 3.5], [None, "balcony", "balcony", 9, 42, 3.5],
                ["2B", "landing", "landing", 9, 36.5, 3.5], [None, "balcony", "balcony", 9, 34, 3.5]], merge)


def merged_reading(name):
    def merge(work, sheet):
        sheet.merge_cells("E2:E3")

    book(name, [HEAD, ["2A", "landing", "landing", 9, 36.5, 3.5], ["2B", "landing", "landing", 9, None, 3.5]], merge)


def hidden(name):
    def hide(work, sheet):
        sheet.row_dimensions[3].hidden = True
        sheet.column_dimensions["C"].hidden = True
        old = work.create_sheet("Old")
        old.append(HEAD)
        old.append(["9Z", "landing", "landing", 9, 30, 5])
        old.sheet_state = "hidden"

    book(name, [HEAD] + ROWS, hide)


def formulas(name):
    # a library stores no results: nobody has worked these out
    book(name, [HEAD, ["2A", "landing", "landing", 9, "=927/25.4", 3.5], ROWS[1]])


def stored_results(name):
    work = xlsxwriter.Workbook(HERE / name)
    sheet = work.add_worksheet("Flats")
    for column, text in enumerate(HEAD):
        sheet.write(0, column, text)
    for row, cells in enumerate(ROWS, 1):
        for column, cell in enumerate(cells):
            sheet.write(row, column, cell)
    sheet.write_formula(1, 4, "=73/2", None, 36.5)
    sheet.write(3, 0, "Average")
    sheet.write_formula(3, 4, "=AVERAGE(E2:E3)", None, 35.375)
    sheet.write_formula(4, 5, "=MAX(F2:F3)", None, 3.875)
    sheet.write(4, 1, "worst of all")
    work.close()


def errors(name):
    work = xlsxwriter.Workbook(HERE / name)
    sheet = work.add_worksheet("Flats")
    for column, text in enumerate(HEAD):
        sheet.write(0, column, text)
    for row, cells in enumerate(ROWS, 1):
        for column, cell in enumerate(cells):
            sheet.write(row, column, cell)
    sheet.write_formula(1, 4, "=1/0", None, "#DIV/0!")
    work.close()


def dates(name):
    def make(work, sheet):
        sheet["E2"] = datetime.date(2026, 3, 8)
        sheet["E2"].number_format = "m/d"
        sheet["F2"] = datetime.time(2, 11)
        sheet["F3"] = datetime.date(2026, 1, 2)

    book(name, [HEAD] + [row[:] for row in ROWS], make)


def dates_1904(name):
    work = xlsxwriter.Workbook(HERE / name, {"date_1904": True})
    sheet = work.add_worksheet("Flats")
    day = work.add_format({"num_format": "d-mmm"})
    for column, text in enumerate(HEAD + ["date"]):
        sheet.write(0, column, text)
    for row, cells in enumerate(ROWS, 1):
        for column, cell in enumerate(cells):
            sheet.write(row, column, cell)
        sheet.write_datetime(row, 6, datetime.datetime(2026, 11, 12), day)
    sheet.write_datetime(1, 5, datetime.datetime(2026, 3, 8), day)
    work.close()


def fractions(name):
    def shape(work, sheet):
        for cell in ("E2", "F2", "E3", "F3"):
            sheet[cell].number_format = "# ?/?"
        sheet["E2"] = 36.9375
        sheet["F2"] = 3.875

    book(name, [HEAD] + [row[:] for row in ROWS], shape)


def unit_in_format(name):
    def shape(work, sheet):
        for row in (2, 3):
            sheet.cell(row, 4).number_format = '0 "ft"'
            sheet.cell(row, 5).number_format = '0.0## "in"'
            sheet.cell(row, 6).number_format = '0.0## "in"'

    book(name, [["unit", "guard", "place", "drop", "height", "opening"]] + ROWS, shape)


def percent_and_money(name):
    def shape(work, sheet):
        sheet["F2"] = 0.035
        sheet["F2"].number_format = "0.0%"
        sheet["E3"].number_format = '"$"#,##0.00'

    book(name, [HEAD] + [row[:] for row in ROWS], shape)


def struck(name):
    def strike(work, sheet):
        sheet["E2"].font = Font(strike=True)

    book(name, [HEAD] + ROWS, strike)


def coloured(name):
    """A red cell stands for something that nobody wrote; a row that is green throughout for nothing."""
    def colour(work, sheet):
        sheet["E3"] = None
        sheet["E3"].fill = PatternFill("solid", fgColor="FFFF0000")
        for cell in sheet[4][:6]:
            cell.fill = PatternFill("solid", fgColor="FFCCFFCC")

    book(name, [HEAD] + ROWS + [["2C", "landing", "landing", 9, 36.5, None]], colour)


def comments(name):
    def comment(work, sheet):
        sheet["E2"].comment = Comment("wrong, it was 35 1/2", "R. T.")
        sheet["A2"].comment = Comment("top floor", "R. T.")

    book(name, [HEAD] + ROWS, comment)


def raised(name):
    def runs(work, sheet):
        sheet["F2"] = CellRichText("3", TextBlock(InlineFont(vertAlign="superscript"), "7"), "/",
                                   TextBlock(InlineFont(vertAlign="subscript"), "8"))
        sheet["F3"] = CellRichText("3 ", TextBlock(InlineFont(strike=True), "1/2"), " 3/4")

    book(name, [HEAD] + [row[:] for row in ROWS], runs)


def totals(name):
    book(name, [HEAD] + ROWS + [[], ["Total", None, None, 18, 70.75, 7.375], [None, "Average", None, 9, 35.4, 3.7],
                                [None, "Signed: R. T."], ["Legend", "red: to be mended"]])


def two_tables(name):
    book(name, [HEAD] + ROWS + [[], HEAD, ["3A", "landing", "landing", 9, 36.5, 3.5], [],
                                ["unit", "guard", "height (mm)"], ["4A", "stair", 900]])


def other_sheets(name):
    def more(work, sheet):
        notes = work.create_sheet("Notes")
        notes.append(["Keys are with the caretaker"])
        work.create_sheet("Empty")
        more = work.create_sheet("Annex")
        more.append(HEAD)
        more.append(["5A", "porch", "porch", 4, 36.5, 3.5])

    book(name, [HEAD] + ROWS, more)


def filled_down(name):
    book(name, [["date", "by", "rules"] + HEAD] +
         [[datetime.date(2026, 3, 8), "R. T.", "us-dwelling-2018"] + row for row in ROWS])


def headings(name):
    book(name, [["Flat", "Guard:", "place", "drop, ft", "Height in inches", "opening [mm]", "Bottom_gap / mm",
                 'end gap "', "Colour"]] +
         [["2A", "landing", "landing", 9, 36.5, 89, 40, 2, "white"]])


def metric(name):
    book(name, [["unit", "guard", "place", "drop (mm)", "height (mm)", "opening (mm)"],
                ["1", "Balkon", "balcony", 2700, 1067, 98.5], ["2", "Balkon", "balcony", 2700, 895.5, 110]])


def yes_no(name):
    book(name, [HEAD + ["shared"]] + [ROWS[0] + [True], ROWS[1] + [False]])


def names_that_are_dates(name):
    def make(work, sheet):
        sheet["A2"] = datetime.date(2026, 2, 1)

    book(name, [HEAD] + [row[:] for row in ROWS], make)


def blank_title_only(name):
    book(name, [["Railings"], ["to be filled in"]])


def old_date_cells(name):
    book(name, [HEAD + ["built"]] + [ROWS[0] + [datetime.date(1994, 5, 1)], ROWS[1] + [1994]])


def line_breaks(name):
    book(name, [["unit", "guard", "place", "drop\n(ft)", "height\n(in)", "note"],
                ["2A", "landing", "landing", 9, 36.5, "locked gate,\nasked for the \"key\""]])


def text_box(name):
    work = xlsxwriter.Workbook(HERE / name)
    sheet = work.add_worksheet("Flats")
    for row, cells in enumerate([["unit", "guard", "height"], ["2A", "landing", 36.5]]):
        for column, cell in enumerate(cells):
            sheet.write(row, column, cell)
    sheet.insert_textbox(5, 0, "all in inches")
    work.close()


TYPED = """unit;guard;place;drop (ft);height (in);opening (in)
2A;landing;landing;9;36 15/16;3/8
2B;landing;landing;9;34 1/4;2:11
2C;landing;landing;9;41-3/4;1/2
"""

TYPED_DE = """unit;guard;place;drop (mm);height (mm);opening (mm)
1;Balkon;balcony;2700;1.067;98,5
2;Balkon;balcony;2700;895,5;3.7.8
"""


def office(source, form, target, infilter=None, outfilter=None):
    """Converts a file with LibreOffice, as a person would who opens and saves it."""
    with tempfile.TemporaryDirectory() as folder:
        where = pathlib.Path(folder)
        command = ["soffice", f"-env:UserInstallation=file://{folder}/profile", "--headless"]
        if infilter:
            command.append(f"--infilter={infilter}")
        convert = form if outfilter is None else f"{form}:{outfilter}"
        command += ["--convert-to", convert, "--outdir", str(where / "out"), str(source)]
        subprocess.run(command, check=True, capture_output=True, timeout=180)
        made = next((where / "out").glob(f"*.{form}"))
        shutil.copy(made, HERE / target)


def typed(text, language, form, target):
    """Types a text into Calc in this language (its number in Windows), and saves it."""
    with tempfile.TemporaryDirectory() as folder:
        source = pathlib.Path(folder) / "typed.csv"
        source.write_text(text, encoding="utf-8")
        office(source, form, target, f"CSV:59,34,76,1,,{language},false,true")


US, DE, FR = 1033, 1031, 1036
CSV = "Text - txt - csv (StarCalc)"

if __name__ == "__main__":
    for make, name in [
        (plain, "plain.xlsx"), (title, "title-rows.xlsx"), (offset, "begins-at-c5.xlsx"),
        (unit_row, "row-of-units.xlsx"), (group_row, "row-of-groups.xlsx"),
        (merged_units, "merged-units.xlsx"), (merged_reading, "merged-reading.xlsx"),
        (hidden, "hidden.xlsx"), (formulas, "formulas-without-results.xlsx"),
        (stored_results, "formulas-with-results.xlsx"), (errors, "errors.xlsx"), (dates, "dates.xlsx"),
        (dates_1904, "dates-1904.xlsx"), (fractions, "fraction-formats.xlsx"),
        (unit_in_format, "unit-in-the-format.xlsx"), (percent_and_money, "percent-and-money.xlsx"),
        (struck, "struck-out.xlsx"), (coloured, "colours-alone.xlsx"), (comments, "comments.xlsx"), (raised, "raised-digits.xlsx"),
        (totals, "totals-and-legend.xlsx"), (two_tables, "two-tables.xlsx"),
        (other_sheets, "several-sheets.xlsx"), (filled_down, "filled-down.xlsx"), (headings, "headings.xlsx"),
        (metric, "metric.xlsx"), (yes_no, "yes-and-no.xlsx"),
        (names_that_are_dates, "names-that-are-dates.xlsx"), (blank_title_only, "no-survey.xlsx"),
        (old_date_cells, "built-as-a-date.xlsx"), (line_breaks, "line-breaks.xlsx"), (text_box, "text-box.xlsx"),
    ]:
        make(name)
    for name in ["merged-units", "hidden", "comments", "struck-out", "colours-alone", "raised-digits", "dates", "formulas-with-results",
                 "errors", "percent-and-money", "fraction-formats", "unit-in-the-format"]:
        office(HERE / f"{name}.xlsx", "ods", f"{name}.ods")
    typed(TYPED, US, "ods", "typed-us.ods")
    typed(TYPED, US, "xlsx", "typed-us.xlsx")
    typed(TYPED, FR, "ods", "typed-fr.ods")
    typed(TYPED_DE, DE, "ods", "typed-de.ods")
    typed(TYPED_DE, DE, "xlsx", "typed-de.xlsx")
    # saved as CSV as it is shown: semicolons and Windows-1252, commas and UTF-16
    office(HERE / "typed-us.ods", "csv", "typed-us.csv", outfilter=f"{CSV}:44,34,76,1,,{US},false,true")
    office(HERE / "typed-de.ods", "csv", "typed-de.csv", outfilter=f"{CSV}:59,34,1,1,,{DE},false,true")
    office(HERE / "merged-units.ods", "csv", "merged-units.csv", outfilter=f"{CSV}:44,34,76,1,,{US},false,true")
    office(HERE / "metric.xlsx", "csv", "utf-16.csv", outfilter=f"{CSV}:9,34,65535,1,,{US},false,true")
