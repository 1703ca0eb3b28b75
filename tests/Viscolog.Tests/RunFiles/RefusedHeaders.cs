namespace Viscolog.Tests.RunFiles;

/// <summary>A file for every reason to refuse header lines, or a file without any, each with the exact text of the refusal.</summary>
internal static class RefusedHeaders
{
    private const string Header = "# base_g: 120\n# thickener: TA\n";

    private const string Names = "thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,string_mm,note\n";

    /// <summary>What is wrong, the file, and the refusal.</summary>
    public static TheoryData<string, string, string> All { get; } = new()
    {
        {
            "empty file",
            "",
            "pot.csv: read an empty file, expected a run file: header lines '# key: value', a row of column names, and a row for each event"
        },
        {
            "only a byte order mark",
            "\uFEFF",
            "pot.csv: read an empty file, expected a run file: header lines '# key: value', a row of column names, and a row for each event"
        },
        {
            "no header row",
            Header,
            "pot.csv: read no header row, expected a row of column names after the header lines, such as "
                + "'thickener,added_g,stir_s,wait_s,viscosity_mpas'"
        },
        {
            "run_id that is none",
            Header + "# run_id: 7\n" + Names,
            "pot.csv, line 3: read 'run_id: 7', expected a UUID as the log writes it, such as 0199d3a0-5c1e-7b3a-9f10-2a6b8c4d0e11; "
                + "leave the line out if there is none"
        },
        {
            "rows without header row",
            Header + "TA,0.6,10,30,1420\n",
            "pot.csv, line 3: read 'TA,0.6,10,30,1420', expected the header row, with column names such as "
                + "'thickener,added_g,stir_s,wait_s,viscosity_mpas'"
        },
        {
            "header line without colon",
            "# base_g 120\n" + Names,
            "pot.csv, line 1: read '# base_g 120', expected a header line '# key: value'"
        },
        {
            "header line without key",
            "# : 120\n" + Names,
            "pot.csv, line 1: read '# : 120', expected a header line '# key: value'"
        },
        {
            "no base_g",
            "# thickener: TA\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv: read no base_g, expected a header line '# base_g: 120' with the grams of base at the start"
        },
        {
            "base of nothing",
            "# base_g: 0\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 1: read 'base_g: 0', expected a number in g, at least 0.001"
        },
        {
            "empty base_g",
            "# base_g:\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 1: read 'base_g:', expected a number in g, at least 0.001, with a decimal point, without unit or thousands "
                + "separators"
        },
        {
            "base with its unit",
            "# base_g: 120 g\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 1: read 'base_g: 120 g', expected a number in g, at least 0.001, with a decimal point, without unit or "
                + "thousands separators"
        },
        {
            "base in another unit",
            "# base_kg: 0.12\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 1: read 'base_kg: 0.12', expected base_g: give it in that unit"
        },
        {
            "base twice",
            "# base_g: 120\n# base_g: 121\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'base_g: 121', expected base_g once: it is already in line 1"
        },
        {
            "name twice",
            "# base_g: 120\n# name: A\n# NAME: B\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'NAME: B', expected name once: it is already in line 2"
        },
        {
            "unsupported version",
            "# viscolog-run: 2\n# base_g: 120\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 1: read 'viscolog-run: 2', expected version 1, the one that this program reads; get the file again in that "
                + "version or a newer program"
        },
        {
            "target twice",
            "# base_g: 120\n# target_mpas: 900\n# target_mpas: 950\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'target_mpas: 950', expected target_mpas once: it is already in line 2"
        },
        {
            "target and low end",
            "# base_g: 120\n# target_mpas: 900\n# target_low_mpas: 800\n# target_high_mpas: 1000\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'target_low_mpas: 800', expected one target: target_mpas, or target_low_mpas with target_high_mpas"
        },
        {
            "high end, then target",
            "# base_g: 120\n# target_high_mpas: 1000\n# target_mpas: 900\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'target_mpas: 900', expected one target: target_mpas, or target_low_mpas with target_high_mpas"
        },
        {
            "low end alone",
            "# base_g: 120\n# target_low_mpas: 800\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'target_low_mpas: 800', expected target_high_mpas as well: a band has two ends"
        },
        {
            "high end alone",
            "# base_g: 120\n# target_high_mpas: 800\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'target_high_mpas: 800', expected target_low_mpas as well: a band has two ends"
        },
        {
            "ends the wrong way round",
            "# base_g: 120\n# target_low_mpas: 1000\n# target_high_mpas: 800\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'target_high_mpas: 800', expected a high end above the low end"
        },
        {
            "negative target",
            "# base_g: 120\n# target_mpas: -5\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'target_mpas: -5', expected a number in mPa·s, at least 0.001"
        },
        {
            "tolerance of everything",
            "# base_g: 120\n# target_mpas: 900\n# tolerance_pct: 100\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'tolerance_pct: 100', expected a number in %, between 0.001 and 99"
        },
        {
            "unknown method",
            "# base_g: 120\n# method: iso-2431-7\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'method: iso-2431-7', expected a method: direct, iso-2431-4, d1200-4, d4212-44ml-4, d4212-23ml-4, "
                + "krebs, rotational, falling-ball, slump; other cups by their number"
        },
        {
            "string band the wrong way round",
            "# base_g: 120\n# target_string_mm: 60-40\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'target_string_mm: 60-40', expected low-high in mm, the low end first and smaller, each with a decimal "
                + "point, without unit or thousands separators"
        },
        {
            "string band of one number",
            "# base_g: 120\n# target_string_mm: 60\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'target_string_mm: 60', expected low-high in mm, the low end first and smaller, each with a decimal "
                + "point, without unit or thousands separators"
        },
        {
            "reference below absolute zero",
            "# base_g: 120\n# reference_temp_c: -300\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'reference_temp_c: -300', expected a number in °C, at least -273.15"
        },
        {
            "thickener without name",
            "# base_g: 120\n# thickener: ; range_pct=1-5\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'thickener: ; range_pct=1-5', expected a name first, such as '# thickener: TA; range_pct=1-5'"
        },
        {
            "thickener traits after a comma",
            "# base_g: 120\n# thickener: TA, range_pct=1-5\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'thickener: TA, range_pct=1-5', expected a name first, such as '# thickener: TA; range_pct=1-5'"
        },
        {
            "thickener twice",
            Header + "# thickener: TA\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 3: read 'thickener: TA', expected each thickener once: 'TA' is already in the header"
        },
        {
            "unknown chemistry",
            "# base_g: 120\n# thickener: TA; chemistry=magnetic\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'chemistry=magnetic', expected a chemistry: alkali-swellable, associative, cellulosic, clay, other"
        },
        {
            "range the wrong way round",
            "# base_g: 120\n# thickener: TA; range_pct=5-1\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'range_pct=5-1', expected low-high in g per 100 g of base, the low end first and smaller, each with a "
                + "decimal point, without unit or thousands separators"
        },
        {
            "range of one number",
            "# base_g: 120\n# thickener: TA; range_pct=5\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'range_pct=5', expected low-high in g per 100 g of base, the low end first and smaller, each with a "
                + "decimal point, without unit or thousands separators"
        },
        {
            "dilution of words",
            "# base_g: 120\n# thickener: TA; dilution=half\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'dilution=half', expected parts of thickener to parts of water such as 1:1, each with a decimal point, "
                + "without unit or thousands separators"
        },
        {
            "dilution of nothing",
            "# base_g: 120\n# thickener: TA; dilution=0:1\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'dilution=0:1', expected parts of thickener to parts of water such as 1:1, each with a decimal point, "
                + "without unit or thousands separators"
        },
        {
            "active above everything",
            "# base_g: 120\n# thickener: TA; active_pct=130\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'active_pct=130', expected a number in %, above 0 and at most 100"
        },
        {
            "negative price",
            "# base_g: 120\n# thickener: TA; price_per_kg=-1\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'price_per_kg=-1', expected a price of 0 or more, with a decimal point, without unit or thousands "
                + "separators"
        },
        {
            "trait twice",
            "# base_g: 120\n# thickener: TA; active_pct=30; active_pct=31\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'active_pct=31', expected active_pct once for a thickener"
        },
        {
            "trait without value",
            "# base_g: 120\n# thickener: TA; alkali-swellable\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'alkali-swellable', expected key=value, the key one of chemistry, range_pct, active_pct, density_g_ml, "
                + "price_per_kg, dilution, formerly"
        },
        {
            "trait in another unit",
            "# base_g: 120\n# thickener: TA; density_kg_m3=1100\n" + Names + ",0,0,60,850,,,,\n",
            "pot.csv, line 2: read 'density_kg_m3=1100', expected density_g_ml: give it in that unit"
        },
    };
}
