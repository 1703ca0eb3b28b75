namespace Viscolog.Tests.RunFiles;

/// <summary>A file for every reason to refuse column names or rows, each with the exact text of the refusal.</summary>
internal static class RefusedTables
{
    private const string Header = "# base_g: 120\n# thickener: TA\n";

    private const string Names = "thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,string_mm,note\n";

    /// <summary>What is wrong, the file, and the refusal.</summary>
    public static TheoryData<string, string, string> All { get; } = new()
    {
        {
            "both separators",
            Header + "thickener,added_g;note\n",
            "pot.csv, line 3: read 'thickener,added_g;note', expected one separator: commas, or semicolons with decimal commas; a name "
                + "that contains the other goes in quotes"
        },
        {
            "duplicate column",
            Header + "thickener,added_g,note,Note\n",
            "pot.csv, line 3, column Note: read 'Note', expected each column once"
        },
        {
            "column without name",
            Header + "thickener,,note\n",
            "pot.csv, line 3, column 2: read nothing, expected a column name; delete the column if it is empty"
        },
        {
            "column in another unit",
            Header + "thickener,added_kg,note\n",
            "pot.csv, line 3, column added_kg: read 'added_kg', expected added_g or added_ml or added_pct: give it in that unit"
        },
        {
            "viscosity in a unit of kinematics",
            Header + "thickener,added_g,viscosity_cst\n",
            "pot.csv, line 3, column viscosity_cst: read 'viscosity_cst', expected viscosity_cp or viscosity_mpas or viscosity_p or "
                + "viscosity_pas: give it in that unit"
        },
        {
            "a row that stands for one that counts",
            Header + "added_g,void,replaces\n1,typed twice,\n2,,above\n3,,above\n",
            "pot.csv, line 6, column replaces: read 'above', expected 'above' in a row that replaces a void row right above it, or an "
                + "empty cell"
        },
        {
            "header line in the table",
            Header + Names + "# lot: 7\n",
            "pot.csv, line 4: read '# lot: 7', expected a row of the table: header lines stand before the column names"
        },
        {
            "more fields than columns",
            Header + Names + "TA,0.6,10,30,1420,23.1,8.8,,note, with a comma\n",
            "pot.csv, line 4: read 10 fields, expected at most 9, as many as the header row names; a text that contains the separator "
                + "goes in quotes"
        },
        {
            "unterminated quote",
            Header + Names + ",0,0,60,850,,,,\"as received\n,0,0,90,860,,,,\n",
            "pot.csv, line 4: read ',0,0,60,850,,,,\"as received ,0,0,90,860,,,,', expected a closing quote: the cell that a quote opens "
                + "here never ends"
        },
        {
            "text after a quote",
            Header + Names + ",0,0,60,850,,,,\"as\" received\n",
            "pot.csv, line 4: read ',0,0,60,850,,,,\"as\" received', expected quotes around the whole cell, and each quote inside it "
                + "doubled"
        },
        {
            "quote inside a cell",
            Header + Names + ",0,0,60,850,,,,a 5\" cup\n",
            "pot.csv, line 4: read ',0,0,60,850,,,,a 5\" cup', expected quotes around the whole cell, and each quote inside it doubled"
        },
        {
            "quote of a column name left open",
            Header + "thickener,added_g,\"note\n",
            "pot.csv, line 3: read 'thickener,added_g,\"note', expected a closing quote: the cell that a quote opens here never ends"
        },
        {
            "unit in the cell",
            Header + Names + ",0,0,60,850 cP,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read '850 cP', expected a number in mPa·s, at least 0.001, with a decimal point, "
                + "without unit or thousands separators"
        },
        {
            "not a number",
            Header + Names + ",0,0,60,n/a,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read 'n/a', expected a number in mPa·s, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"
        },
        {
            "not finite",
            Header + Names + ",0,0,60,NaN,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read 'NaN', expected a number in mPa·s, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"
        },
        {
            "infinite",
            Header + Names + ",0,0,60,Infinity,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read 'Infinity', expected a number in mPa·s, at least 0.001, with a decimal point, "
                + "without unit or thousands separators"
        },
        {
            "too large to be finite",
            Header + Names + ",0,0,60,1e400,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read '1e400', expected a number in mPa·s, at least 0.001 and at most 1000000000000"
        },
        {
            "thousands separator",
            Header + Names + ",0,0,60,\"1,420\",,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read '1,420', expected a number in mPa·s, at least 0.001, with a decimal point, "
                + "without unit or thousands separators"
        },
        {
            "space as thousands separator",
            Header + Names + ",0,0,60,1 420,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read '1 420', expected a number in mPa·s, at least 0.001, with a decimal point, "
                + "without unit or thousands separators"
        },
        {
            "decimal comma in a comma file",
            Header + Names + "TA,\"0,6\",0,60,850,,,,\n",
            "pot.csv, line 4, column added_g: read '0,6', expected a number in g, 0 or more, with a decimal point, without unit or "
                + "thousands separators"
        },
        {
            "negative viscosity",
            Header + Names + ",0,0,60,-850,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read '-850', expected a number in mPa·s, at least 0.001"
        },
        {
            "negative addition",
            Header + Names + "TA,-0.6,0,60,850,,,,\n",
            "pot.csv, line 4, column added_g: read '-0.6', expected a number in g, 0 or more"
        },
        {
            "negative wait",
            Header + Names + ",0,0,-60,850,,,,\n",
            "pot.csv, line 4, column wait_s: read '-60', expected a number in s, 0 or more"
        },
        {
            "pH beyond the scale",
            Header + Names + ",0,0,60,850,,14.5,,\n",
            "pot.csv, line 4, column ph: read '14.5', expected a number in pH units, between 0 and 14"
        },
        {
            "temperature below absolute zero",
            Header + Names + ",0,0,60,850,-274,,,\n",
            "pot.csv, line 4, column temp_c: read '-274', expected a number in °C, at least -273.15"
        },
        {
            "negative string",
            Header + Names + ",0,0,60,850,,,-1,\n",
            "pot.csv, line 4, column string_mm: read '-1', expected a number in mm, 0 or more"
        },
        {
            "unknown fault",
            Header + Names.TrimEnd() + ",fault\n,0,0,60,850,,,,,bubbles\n",
            "pot.csv, line 4, column fault: read 'bubbles', expected one of lumps, weeping, strings, no-levelling; anything else goes in "
                + "note"
        },
        {
            "unknown thickener",
            Header + Names + "TB,0.6,10,30,1420,,,,\n",
            "pot.csv, line 4, column thickener: read 'TB', expected a thickener of the header (TA), or a header line '# thickener: NAME' "
                + "for it"
        },
        {
            "unknown thickener, nothing added",
            Header + Names + "TB,0,10,30,1420,,,,\n",
            "pot.csv, line 4, column thickener: read 'TB', expected a thickener of the header (TA), or a header line '# thickener: NAME' "
                + "for it"
        },
        {
            "addition without thickener in the header",
            "# base_g: 120\n" + Names + "TA,0.6,10,30,1420,,,,\n",
            "pot.csv, line 3, column thickener: read 'TA', expected a thickener of the header (none so far), or a header line '# "
                + "thickener: NAME' for it"
        },
        {
            "nameless addition, no thickener in the header",
            "# base_g: 120\n" + Names + ",0.6,10,30,1420,,,,\n",
            "pot.csv, line 3, column thickener: read nothing besides added_g '0.6', expected a thickener of the header (none so far), or a "
                + "header line '# thickener: NAME' for it"
        },
        {
            "nameless addition, two thickeners",
            Header + "# thickener: TU\n" + Names + ",0.6,10,30,1420,,,,\n",
            "pot.csv, line 5, column thickener: read nothing besides added_g '0.6', expected a thickener of the header (TA, TU), or a "
                + "header line '# thickener: NAME' for it"
        },
        {
            "both amounts",
            Header + "thickener,added_g,added_pct,note\nTA,0.6,0.5,\n",
            "pot.csv, line 4, column added_pct: read '0.5', expected one amount: added_g already has one"
        },
        {
            "wait runs backwards",
            Header + Names + ",0,0,60,850,,,,\n,0,0,30,860,,,,\n",
            "pot.csv, line 5, column wait_s: read '30', expected 60 s or more: the pot keeps standing until something is added"
        },
        {
            "wait runs backwards after a sample",
            Header + "taken_g,wait_s,viscosity_mpas\n,60,850\n5,59.5,860\n",
            "pot.csv, line 5, column wait_s: read '59.5', expected 60 s or more: the pot keeps standing until something is added"
        },
        {
            "sample larger than the pot",
            Header + "taken_g,note\n121,\n",
            "pot.csv, line 4, column taken_g: read '121', expected less than the 120 g in the pot"
        },
        {
            "sample as large as what is left",
            Header + "taken_g,let_down_g,note\n100,5,\n25,,\n",
            "pot.csv, line 5, column taken_g: read '25', expected less than the 25 g in the pot"
        },
        {
            "two values",
            Header + "viscosity_mpas,viscosity_pas,wait_s\n850,0.85,60\n",
            "pot.csv, line 4, column viscosity_pas: read '0.85', expected one value per row: viscosity_mpas already has one"
        },
        {
            "two kinds of value",
            Header + "viscosity_mpas,cup_s,wait_s\n850,60,60\n",
            "pot.csv, line 4, column cup_s: read '60', expected one value per row: viscosity_mpas already has one"
        },
        {
            "value of another method",
            Header + "cup_s,wait_s\n60,60\n",
            "pot.csv, line 4, column cup_s: read '60', expected an empty cell: the method direct reads viscosity_mpas or viscosity_cp or "
                + "viscosity_pas or viscosity_p"
        },
        {
            "viscosity beside a cup",
            Header + "# method: iso-2431-4\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 5, column viscosity_mpas: read '850', expected an empty cell: the method iso-2431-4 reads cup_s"
        },
        {
            "torque without speed",
            Header + "# method: rotational\ntorque_pct,rpm\n45,\n",
            "pot.csv, line 5, column rpm: read nothing, expected the speed in 1/min: torque_pct needs rpm in the same row"
        },
        {
            "torque without speed column",
            Header + "# method: rotational\ntorque_pct\n45\n",
            "pot.csv, line 5, column rpm: read nothing, expected the speed in 1/min: torque_pct needs rpm in the same row"
        },
        {
            "speed without torque",
            Header + "# method: rotational\ntorque_pct,rpm\n,20\n",
            "pot.csv, line 5, column rpm: read '20', expected an empty cell: rpm goes with torque_pct"
        },
        {
            "viscosity of nothing in Pa·s",
            Header + "viscosity_pas,wait_s\n0,60\n",
            "pot.csv, line 4, column viscosity_pas: read '0', expected a number in Pa·s, at least 0.000001"
        },
        {
            "viscosity beyond any bench in Pa·s",
            Header + "viscosity_pas,wait_s\n1e300,60\n",
            "pot.csv, line 4, column viscosity_pas: read '1e300', expected a number in Pa·s, at least 0.000001 and at most 1000000000"
        },
        {
            "time without offset",
            Header + "time,note\n2026-03-02T09:15:00,stirred\n",
            "pot.csv, line 4, column time: read '2026-03-02T09:15:00', expected a date and time with offset (ISO 8601) such as "
                + "2026-03-02T09:15:00+01:00"
        },
        {
            "wrong date",
            Header + "time,note\n2026-02-30T09:15:00+01:00,stirred\n",
            "pot.csv, line 4, column time: read '2026-02-30T09:15:00+01:00', expected a date and time with offset (ISO 8601) such as "
                + "2026-03-02T09:15:00+01:00"
        },
        {
            "date in another order",
            Header + "time,note\n02/03/2026 09:15,stirred\n",
            "pot.csv, line 4, column time: read '02/03/2026 09:15', expected a date and time with offset (ISO 8601) such as "
                + "2026-03-02T09:15:00+01:00"
        },
        {
            "row in which nothing happens",
            Header + Names + "TA,0,10,30,,,,,\n",
            "pot.csv, line 4: read a row in which nothing happens, expected an addition, let-down, water, sample, reading or note; fill "
                + "the row in or delete it"
        },
        {
            "decimal point in a semicolon file",
            Header + "thickener;added_g;note\nTA;0.6;\n",
            "pot.csv, line 4, column added_g: read '0.6', expected a number in g, 0 or more, with a decimal comma (this is a semicolon "
                + "file), without unit or thousands separators"
        },
        {
            "decimal point in the header of a semicolon file",
            "# base_g: 120.5\nthickener;added_g;note\n",
            "pot.csv, line 1: read 'base_g: 120.5', expected a number in g, at least 0.001, with a decimal comma (this is a semicolon "
                + "file), without unit or thousands separators"
        },
        {
            "decimal comma in the header of a comma file",
            "# base_g: 120,5\nthickener,added_g,note\n",
            "pot.csv, line 1: read 'base_g: 120,5', expected a number in g, at least 0.001, with a decimal point, without unit or "
                + "thousands separators"
        },
        {
            "thousands separator in a semicolon file",
            Header + "thickener;viscosity_mpas;note\n;1.420,5;\n",
            "pot.csv, line 4, column viscosity_mpas: read '1.420,5', expected a number in mPa·s, at least 0.001, with a decimal comma "
                + "(this is a semicolon file), without unit or thousands separators"
        },
        {
            "line behind quoted newlines",
            Header + Names + ",0,0,60,850,,,,\"two\nlines\"\n\n,0,0,90,no,,,,\n",
            "pot.csv, line 7, column viscosity_mpas: read 'no', expected a number in mPa·s, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"
        },
        {
            "line behind CR LF",
            "# base_g: 120\r\n# thickener: TA\r\nthickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,string_mm,note\r\n"
                + ",0,0,60,850,,,,\"two\r\nlines\"\r\n,0,0,90,no,,,,\r\n",
            "pot.csv, line 6, column viscosity_mpas: read 'no', expected a number in mPa·s, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"
        },
        {
            "long text is cut",
            Header + Names + ",0,0,60,aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa,,,,\n",
            "pot.csv, line 4, column viscosity_mpas: read 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa…', expected a "
                + "number in mPa·s, at least 0.001, with a decimal point, without unit or thousands separators"
        },
        {
            "UTF-16 without mark, ASCII letters",
            "#\0 \0",
            "pot.csv, line 1: read byte 0x00, expected text in UTF-8; save the file again as CSV in UTF-8"
        },
    };
}
