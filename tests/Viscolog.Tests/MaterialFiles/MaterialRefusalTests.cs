using Viscolog.MaterialFiles;
using Viscolog.Tables;

namespace Viscolog.Tests.MaterialFiles;

public class MaterialRefusalTests
{
    [Theory]
    [
        InlineData(
            "kind,name\nbases,GB\n",
            "m.csv, line 2, column kind: read 'bases', expected a kind: base, thickener, method, specification, instrument"),
    ]
    [InlineData("kind,name\nbase,\n", "m.csv, line 2, column name: read nothing, expected a name on one line")]
    [InlineData("kind,name\nthickener,T;A\n", "m.csv, line 2, column name: read 'T;A', expected a name on one line, without ';' and '='")]
    [InlineData("kind,name\nbase,GB\nbase,GB\n", "m.csv, line 3, column name: read 'GB', expected each base once")]
    [
        InlineData(
            "kind,name,chemistry\nbase,GB,clay\n",
            "m.csv, line 2, column chemistry: read 'clay', expected an empty cell: a base has no chemistry"),
    ]
    [
        InlineData(
            "kind,name,density_g_ml\nbase,GB,heavy\n",
            "m.csv, line 2, column density_g_ml: read 'heavy', expected a number in g/mL, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,density_kg_l\nbase,GB,1\n",
            "m.csv, line 1, column density_kg_l: read 'density_kg_l', expected density_g_ml: give it in that unit"),
    ]
    [InlineData("kind,name\nmethod,cup\n", "m.csv, line 2: read 'method,cup', expected a method in column method")]
    [
        InlineData(
            "kind,name,method\nmethod,cup,cup\n",
            "m.csv, line 2, column method: read 'cup', expected a method: direct, iso-2431-4, d1200-4, d4212-44ml-4, d4212-23ml-4, "
                + "krebs, rotational, falling-ball, slump; other cups by their number"),
    ]
    [
        InlineData(
            "kind,name,target_low_mpas\nspecification,gel,900\n",
            "m.csv, line 2: read 'specification,gel,900', expected one target: target_mpas with or without tolerance_pct, or "
                + "target_low_mpas below target_high_mpas"),
    ]
    [
        InlineData(
            "kind,name,min_readings\nspecification,gel,1.5\n",
            "m.csv, line 2, column min_readings: read '1.5', expected a whole number of readings"),
    ]
    [
        InlineData(
            "kind,name,ph\nspecification,gel,9-8\n",
            "m.csv, line 2, column ph: read '9-8', expected low-high in pH units, the low end first and smaller, each with a decimal "
                + "point, without unit or thousands separators"),
    ]
    [InlineData("kind,name,retired\nbase,GB,gone\n", "m.csv, line 2, column retired: read 'gone', expected yes, no or an empty cell")]
    [
        InlineData(
            "kind,note\nbase,GB\n",
            "m.csv, line 1: read 'kind,note', expected a header row with the columns kind and name, such as 'kind,name,density_g_ml,note'"),
    ]
    [InlineData("kind,name\nbase,GB,1\n", "m.csv, line 2: read 'base,GB,1', expected no more fields than the header row names; a text "
        + "that contains the separator goes in quotes")]
    [
        InlineData(
            "# viscolog-materials: 2\nkind,name\n",
            "m.csv, line 1: read 'viscolog-materials: 2', expected the header line '# viscolog-materials: 1' alone"),
    ]
    [
        InlineData(
            "",
            "m.csv: read an empty file, expected a materials file: a line '# viscolog-materials: 1', a row of column names, and a row "
                + "for each material"),
    ]
    [
        InlineData(
            "# viscolog-materials: 1\n",
            "m.csv: read no header row, expected a row of column names after the header lines, such as 'kind,name,density_g_ml,note'"),
    ]
    [InlineData("# viscolog-materials\n", "m.csv, line 1: read '# viscolog-materials', expected a header line '# key: value'")]
    [
        InlineData(
            "# viscolog-materials: 1;x;\nkind;name\n",
            "m.csv, line 1: read 'viscolog-materials: 1;x', expected the header line '# viscolog-materials: 1' alone"),
    ]
    [
        InlineData(
            "# viscolog-materials: 1\n# viscolog-materials: 1\nkind,name\n",
            "m.csv, line 2: read 'viscolog-materials: 1', expected the header line '# viscolog-materials: 1' alone"),
    ]
    [
        InlineData(
            "# viscolog-materials: 1\n# bench: 4\nkind,name\n",
            "m.csv, line 2: read 'bench: 4', expected the header line '# viscolog-materials: 1' alone"),
    ]
    [InlineData("kind,name;note\n", "m.csv, line 1: read 'kind,name;note', expected one separator: commas, or semicolons with decimal "
        + "commas; a name that contains the other goes in quotes")]
    [InlineData("kind,name,Name\n", "m.csv, line 1, column Name: read 'Name', expected each column once, with a name")]
    [InlineData("kind,,name\n", "m.csv, line 1, column 2: read nothing, expected each column once, with a name")]
    [
        InlineData(
            "kind,name,price_per_t\n",
            "m.csv, line 1, column price_per_t: read 'price_per_t', expected price_per_kg: give it in that unit"),
    ]
    [
        InlineData(
            "kind,name,target_pas\n", "m.csv, line 1, column target_pas: read 'target_pas', expected target_mpas: give it in that unit"),
    ]
    [
        InlineData(
            "kind,name\nbase,\"GB\n",
            "m.csv, line 2: read 'base,\"GB', expected quotes around the whole cell, closed, and each quote inside it doubled"),
    ]
    [
        InlineData(
            "kind,name\nbase,G\"B\n",
            "m.csv, line 2: read 'base,G\"B', expected quotes around the whole cell, closed, and each quote inside it doubled"),
    ]
    [
        InlineData(
            "kind,name,reads\ninstrument,scale,\n",
            "m.csv, line 2: read 'instrument,scale', expected how its lines are read in column reads"),
    ]
    [
        InlineData(
            "kind,name,reads\ninstrument,scale,added_g\n",
            "m.csv, line 2, column reads: read 'added_g', expected how its lines are read: added_g: read nothing, expected FIELD, FIELD "
                + "UNIT, FIELD/UNITFIELD or FROM-TO (columns of a line), such as 2, 2 Pa.s, 2/3 or 5-12"),
    ]
    [
        InlineData(
            "kind,name,reads,source\ninstrument,scale,added_g=1,COM3\n",
            "m.csv, line 2, column source: read 'COM3', expected where its lines come from: read 'COM3', expected a serial port "
                + "(serial:/dev/ttyUSB0 or serial:COM3@19200,7E1), tcp:HOST:PORT, a file that grows (file:PATH), - for standard input, "
                + "modbus-tcp:HOST:PORT/UNIT/FIRST/COUNT/FORM or modbus-rtu:PORT@BAUD,8E1/UNIT/FIRST/COUNT/FORM"),
    ]
    [
        InlineData(
            "kind,name\n,GB\n",
            "m.csv, line 2, column kind: read nothing, expected a kind: base, thickener, method, specification, instrument"),
    ]
    [
        InlineData(
            "kind,name\n# lot: 7\n",
            "m.csv, line 2, column kind: read '# lot: 7', expected a kind: base, thickener, method, specification, instrument"),
    ]
    [InlineData("kind,name\nbase,\"G\nB\"\n", "m.csv, line 2, column name: read 'G B', expected a name on one line")]
    [InlineData("kind,name\nbase,\"G\u2028B\"\n", "m.csv, line 2, column name: read 'G B', expected a name on one line")]
    [InlineData("kind,name\nbase,\"G\nB\"\nbase,GB\n", "m.csv, line 2, column name: read 'G B', expected a name on one line")]
    [InlineData("kind,name,note\nbase,GB,\"a\nb\"\nbase,GB,\n", "m.csv, line 4, column name: read 'GB', expected each base once")]
    [InlineData("kind,name,base\nspecification,gel,\"G\nB\"\n", "m.csv, line 2, column base: read 'G B', expected a name on one line")]
    [
        InlineData(
            "kind,name,thickener\nspecification,gel,T=A\n",
            "m.csv, line 2, column thickener: read 'T=A', expected a name on one line, without ';' and '='"),
    ]
    [
        InlineData(
            "kind,name,repeatability_pct\nspecification,gel,3\n",
            "m.csv, line 2, column repeatability_pct: read '3', expected an empty cell: a specification has no repeatability_pct"),
    ]
    [InlineData("kind,name,ph\nmethod,cup,8-9\n", "m.csv, line 2, column ph: read '8-9', expected an empty cell: a method has no ph")]
    [
        InlineData(
            "kind,name,density_g_ml\nbase,GB,\"1,05\"\n",
            "m.csv, line 2, column density_g_ml: read '1,05', expected a number in g/mL, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"),
    ]
    [
        InlineData(
            "kind;name;density_g_ml\nbase;GB;1.05\n",
            "m.csv, line 2, column density_g_ml: read '1.05', expected a number in g/mL, at least 0.001, with a decimal comma (this is a "
                + "semicolon file), without unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,density_g_ml\nbase,GB,0\n",
            "m.csv, line 2, column density_g_ml: read '0', expected a number in g/mL, at least 0.001"),
    ]
    [
        InlineData(
            "kind,name,price_per_kg\nthickener,TA,-1\n",
            "m.csv, line 2, column price_per_kg: read '-1', expected a price of 0 or more, with a decimal point, without unit or "
                + "thousands separators"),
    ]
    [
        InlineData(
            "kind,name,chemistry\nthickener,TA,sticky\n",
            "m.csv, line 2, column chemistry: read 'sticky', expected a chemistry: alkali-swellable, associative, cellulosic, clay, other"),
    ]
    [
        InlineData(
            "kind,name,range_pct\nthickener,TA,5-1\n",
            "m.csv, line 2, column range_pct: read '5-1', expected low-high in g per 100 g of base, the low end first and smaller, each "
                + "with a decimal point, without unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,dilution\nthickener,TA,1/1\n",
            "m.csv, line 2, column dilution: read '1/1', expected parts of thickener to parts of water such as 1:1, each with a decimal "
                + "point, without unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,method,repeatability_pct\nmethod,cup,krebs,0\n",
            "m.csv, line 2, column repeatability_pct: read '0', expected a number in %, above 0 and at most 100"),
    ]
    [
        InlineData(
            "kind,name,target_mpas,target_low_mpas,target_high_mpas\nspecification,gel,900,800,1000\n",
            "m.csv, line 2: read 'specification,gel,900,800,1000', expected one target: target_mpas with or without tolerance_pct, or "
                + "target_low_mpas below target_high_mpas"),
    ]
    [
        InlineData(
            "kind,name,target_low_mpas,target_high_mpas\nspecification,gel,900,900\n",
            "m.csv, line 2: read 'specification,gel,900,900', expected one target: target_mpas with or without tolerance_pct, or "
                + "target_low_mpas below target_high_mpas"),
    ]
    [
        InlineData(
            "kind,name,tolerance_pct\nspecification,gel,15\n",
            "m.csv, line 2: read 'specification,gel,15', expected one target: target_mpas with or without tolerance_pct, or "
                + "target_low_mpas below target_high_mpas"),
    ]
    [
        InlineData(
            "kind,name,target_mpas,tolerance_pct\nspecification,gel,900,100\n",
            "m.csv, line 2, column tolerance_pct: read '100', expected a number in %, between 0.001 and 99"),
    ]
    [
        InlineData(
            "kind,name,target_mpas\nspecification,gel,NaN\n",
            "m.csv, line 2, column target_mpas: read 'NaN', expected a number in mPa·s, at least 0.001, with a decimal point, without "
                + "unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,target_string_mm\nspecification,gel,40\n",
            "m.csv, line 2, column target_string_mm: read '40', expected low-high in mm, the low end first and smaller, each with a "
                + "decimal point, without unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,reference_temp_c\nspecification,gel,-300\n",
            "m.csv, line 2, column reference_temp_c: read '-300', expected a number in °C, at least -273.15"),
    ]
    [
        InlineData(
            "kind,name,ph\nspecification,gel,8-15\n",
            "m.csv, line 2, column ph: read '8-15', expected low-high in pH units, the low end first and smaller, each with a decimal "
                + "point, without unit or thousands separators"),
    ]
    [
        InlineData(
            "kind,name,min_readings\nspecification,gel,0\n", "m.csv, line 2, column min_readings: read '0', expected a number, at least 1"),
    ]
    public void A_bad_file_is_refused_whole(string text, string refusal)
        => Assert.Equal(refusal, MaterialText.Refusal(text));

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_refused()
        => Assert.Equal(
            "m.csv, line 2: read byte 0xE4, expected text in UTF-8; save the file again as CSV in UTF-8",
            Assert.IsType<TableOutcome<MaterialFile>.Refused>(
                MaterialFileReader.Parse("m.csv", new byte[] { (byte)'#', (byte)'\n', 0xE4 })).Refusal.Text);
}
