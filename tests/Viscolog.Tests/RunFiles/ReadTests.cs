using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;

namespace Viscolog.Tests.RunFiles;

public class ReadTests
{
    private const string Head = "# base_g: 120\n# thickener: TA\n";

    private const string Gel = """
        # viscolog-run: 1
        # name: Harbour Lane wall gel 07
        # base: Wharf
        # lot: L5
        # operator: second bench
        # note: cold morning: 16 °C in the hall
        # base_g: 150.5
        # base_density_g_ml: 1.31
        # thickener: TA; chemistry=alkali-swellable; range_pct=0.5-4; active_pct=30; density_g_ml=1.06; price_per_kg=3.40; dilution=1:2
        # thickener: TU; chemistry=Associative
        # target_mpas: 9000
        # tolerance_pct: 12.5
        # target_string_mm: 40-60
        # reference_temp_c: 20
        # method: direct
        # repeatability_pct: 2.5
        # scale_step_g: 0.05
        # too_stiff_mpas: 4e4
        thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,string_mm,note
        ,0,0,60,850,23.0,8.9,,base as received
        TA,0.60,10,30,1420,23.1,8.8,35,
        ,0,0,60,1450,23.1,,,same dose read again

        """;

    [Fact]
    public void Every_header_key_reaches_the_run()
    {
        var run = FileText.Read(Gel).Run;
        Assert.Equal(
            ("Harbour Lane wall gel 07", "L5", "second bench", "cold morning: 16 °C in the hall"),
            (run.Name, run.Lot, run.Operator, run.Note));
        Assert.Equal(new PotBase("Wharf", Density.FromGramsPerMilliliter(1.31)), run.Base);
        Assert.Equal(Mass.FromGrams(150.5), run.BaseMass);
        Assert.Equal(new Target.Value(Viscosity.FromMilliPascalSeconds(9000), Percentage.FromPercent(12.5)), run.Target);
        Assert.Equal(new StringBand(Length.FromMillimeters(40), Length.FromMillimeters(60)), run.TargetString);
        Assert.Equal(Temperature.FromCelsius(20), run.ReferenceTemperature);
        Assert.Equal(Method.Direct, run.Method);
        Assert.Equal(Percentage.FromPercent(2.5), run.Repeatability);
        Assert.Equal(Mass.FromGrams(0.05), run.ScaleStep);
        Assert.Equal(Viscosity.FromMilliPascalSeconds(40000), run.TooStiff);
    }

    [Fact]
    public void Every_trait_of_a_thickener_is_read()
    {
        var run = FileText.Read(Gel).Run;
        var expected = new Thickener("TA")
        {
            Chemistry = ThickenerChemistry.AlkaliSwellable,
            UsualRange = new(Dose.FromPercent(0.5), Dose.FromPercent(4)),
            Active = Percentage.FromPercent(30),
            Density = Density.FromGramsPerMilliliter(1.06),
            PricePerKilogram = 3.4m,
            Dilution = new(1, 2),
        };
        Assert.Equal([expected, new("TU") { Chemistry = ThickenerChemistry.Associative }], run.Thickeners);
    }

    [Fact]
    public void Rows_become_entries_in_order()
    {
        var file = FileText.Read(Gel);
        Assert.Equal(
            [
                new Entry.Measured(Direct(850, 0, 60, 23, 8.9, null)),
                new Entry.Noted("base as received"),
                new Entry.Dosed("TA", Mass.FromGrams(0.6)),
                new Entry.Measured(Direct(1420, 10, 30, 23.1, 8.8, 35)),
                new Entry.Measured(Direct(1450, 0, 60, 23.1, null, null)),
                new Entry.Noted("same dose read again"),
            ],
            file.Run.Entries);
        Assert.Equal([(0, 2), (2, 2), (4, 2)], file.Rows.Select(r => (r.FirstEntry, r.EntryCount)));
        Assert.Empty(file.Warnings);
    }

    [Fact]
    public void A_run_states_only_what_its_file_states()
    {
        var run = FileText.Read("# base_g: 120\nviscosity_mpas\n850\n").Run;
        Assert.Equal(
            new Run(new(null), Mass.FromGrams(120)) { Entries = run.Entries, Thickeners = run.Thickeners },
            run);
    }

    [Fact]
    public void Within_a_row_a_sample_leaves_first_and_the_note_comes_last()
    {
        const string Row =
            "note,viscosity_mpas,added_g,thickener,water_g,let_down_g,taken_g,time,void\nall,850,1,TA,2,3,4,2026-03-02T09:15Z,spilled\n";
        var entries = FileText.Read(Head + Row).Run.Entries;
        Assert.Equal(
            [
                typeof(Entry.TakenOut),
                typeof(Entry.LetDown),
                typeof(Entry.Watered),
                typeof(Entry.Dosed),
                typeof(Entry.Measured),
                typeof(Entry.Noted),
            ],
            entries.Select(e => e.GetType()));
        Assert.All(entries, e => Assert.Equal("spilled", e.VoidReason));
        Assert.All(entries, e => Assert.Equal(new(2026, 3, 2, 9, 15, 0, TimeSpan.Zero), e.Time));
    }

    [Theory]
    [InlineData("120", "0.7", "", 0.84)]
    [InlineData("110", "0.3", "", 0.33)]
    [InlineData("100", "0.55", "; dilution=1:2", 1.65)]
    [InlineData("70", "1.1", "; dilution=2:1", 1.155)]
    public void A_percentage_is_of_the_base_in_the_pot_and_leaves_no_rounding_behind(
        string grams,
        string percent,
        string trait,
        double poured)
    {
        var entries = FileText.Read($"# base_g: {grams}\n# thickener: TA{trait}\nthickener,added_pct\nTA,{percent}\n").Run.Entries;
        Assert.Equal([new Entry.Dosed("TA", Mass.FromGrams(poured))], entries);
    }

    [Fact]
    public void A_percentage_counts_the_sample_and_the_let_down_of_its_own_row()
    {
        const string Rows = "taken_g,let_down_g,added_pct,void\n20,50,1,\n20,50,1,wrong pot\n";
        var dosed = FileText.Read(Head + Rows).Run.Entries.OfType<Entry.Dosed>().Select(d => d.Poured.Grams);
        // 120 - 20 + 50 = 150 g; the second row is void, so nothing in it happened to the base.
        Assert.Equal([1.5, 1.5], dosed);
    }

    [Fact]
    public void An_amount_without_a_name_is_of_the_only_thickener()
        => Assert.Equal([new Entry.Dosed("TA", Mass.FromGrams(0.6))], FileText.Read(Head + "added_g\n0.60\n").Run.Entries);

    [Theory]
    [InlineData("", "viscosity_mpas", "1420", 1420)]
    [InlineData("", "viscosity_cp", "1.42e3", 1420)]
    [InlineData("", "viscosity_pas", "0.0011", 1.1)]
    [InlineData("", "viscosity_pas", "1.42", 1420)]
    [InlineData("", "viscosity_pas", "+1.42E+0", 1420)]
    [InlineData("", "viscosity_p", "14.2", 1420)]
    [InlineData("# method: rotational\n", "viscosity_mpas", "1420", 1420)]
    public void A_viscosity_is_read_in_the_unit_of_its_column(string method, string column, string text, double expected)
    {
        var value = Assert.IsType<InstrumentValue.Direct>(Value($"{method}{column}\n{text}\n"));
        Assert.Equal(expected, value.Viscosity.MilliPascalSeconds);
    }

    [Theory]
    [InlineData("temp_f\n73.4\n", 23)]
    [InlineData("temp_f\n-459.67\n", -273.15)]
    [InlineData("temp_c\n23\n", 23)]
    public void A_temperature_is_read_in_either_unit(string table, double celsius)
        => Assert.Equal(
            celsius,
            Assert.IsType<Entry.Measured>(Assert.Single(FileText.Read(Head + table).Run.Entries)).Reading.Temperature!.Value.Celsius);

    [Fact]
    public void Milliliters_are_weighed_by_the_thickeners_density()
    {
        const string head = "# base_g: 120\n# thickener: TM; density_g_ml=1.06\n";
        Assert.Equal(new Entry.Dosed("TM", Mass.FromGrams(1.325)), Assert.Single(FileText.Read(head + "added_ml\n1.25\n").Run.Entries));
        Assert.Contains("density_g_ml", FileText.Refusal("# base_g: 120\n# thickener: TM\nadded_ml\n1.25\n"), StringComparison.Ordinal);
        Assert.Contains("diluted with water", FileText.Refusal("# base_g: 120\n# thickener: TM; density_g_ml=1.06; "
            + "dilution=1:1\nadded_ml\n1.25\n"), StringComparison.Ordinal);
        Assert.Contains("one amount", FileText.Refusal(head + "added_g,added_ml\n1,1.25\n"), StringComparison.Ordinal);
        Assert.Contains("one temperature", FileText.Refusal(head + "temp_c,temp_f\n23,73.4\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_method_needs_besides_its_readings_is_read_and_written_again()
    {
        const string head = "# base_g: 120\n# base_density_g_ml: 1.08\n# method: falling-ball\n# ball_diameter_mm: 3\n"
            + "# ball_density_g_ml: 7.8\n# fall_mm: 100\n# jar_diameter_mm: 60\n# temp_coefficient_k: 4200\n";
        var setup = FileText.Read(head + "reading\n42\n").Run.Setup;
        Assert.Equal(
            (3, 7.8, 100, 60, 4200),
            (
                setup.BallDiameter!.Value.Millimeters,
                setup.BallDensity!.Value.GramsPerMilliliter,
                setup.Fall!.Value.Millimeters,
                setup.JarDiameter!.Value.Millimeters,
                setup.TemperatureCoefficient!.Kelvin));
        Assert.Contains(
            "at most",
            FileText.Refusal(head.Replace("4200", "42000", StringComparison.Ordinal) + "reading\n42\n"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Each_method_has_its_value()
    {
        Assert.Equal(new InstrumentValue.CupTime(TimeSpan.FromSeconds(62.5)), Value("# method: iso-2431-4\ncup_s\n62.5\n"));
        Assert.Equal(new InstrumentValue.CupTime(TimeSpan.FromSeconds(31)), Value("# method: d4212-23ml-2.5\ncup_s\n31\n"));
        Assert.Equal(new InstrumentValue.Krebs(85), Value("# method: krebs\nku\n85\n"));
        Assert.Equal(
            new InstrumentValue.Torque(Percentage.FromPercent(45.5), 20), Value("# method: rotational\ntorque_pct,rpm\n45.5,20\n"));
        Assert.Equal(new InstrumentValue.Plain(12.5), Value("# method: slump\nreading\n12.5\n"));
        Assert.Equal(new InstrumentValue.Plain(3), Value("# method: falling-ball\nreading\n3\n"));
    }

    [Fact]
    public void A_band_may_be_given_by_its_ends()
        => Assert.Equal(
            new Target.Ends(Viscosity.FromMilliPascalSeconds(800), Viscosity.FromMilliPascalSeconds(1000)),
            FileText.Read("# target_high_mpas: 1000\n# base_g: 1\n# target_low_mpas: 800\nnote\n").Run.Target);

    [Fact]
    public void Semicolons_go_with_decimal_commas_in_rows_and_header()
    {
        const string Text = "# base_g: 120,5\n# thickener: TA; range_pct=0,5-4,5; dilution=1:0,5\n# target_string_mm: 40,5-60\n"
            + "thickener;added_g;wait_s;viscosity_mpas;note\nTA;0,60;30;1,42e3;warm, but fine\n";
        var run = FileText.Read(Text).Run;
        Assert.Equal(120.5, run.BaseMass.Grams);
        Assert.Equal(
            (0.5, 4.5, 0.5),
            (run.Thickeners[0].UsualRange.Low.Percent, run.Thickeners[0].UsualRange.Top.Percent, run.Thickeners[0].Dilution.WaterParts));
        Assert.Equal(40.5, run.TargetString?.Low.Millimeters);
        Assert.Equal(new Entry.Dosed("TA", Mass.FromGrams(0.6)), run.Entries[0]);
        Assert.Equal(
            1420,
            Assert.IsType<InstrumentValue.Direct>(
                Assert.IsType<Entry.Measured>(run.Entries[1]).Reading.Value).Viscosity.MilliPascalSeconds);
        Assert.Equal(new Entry.Noted("warm, but fine"), run.Entries[2]);
    }

    [Fact]
    public void Byte_order_mark_and_line_ends_make_no_difference()
    {
        var plain = FileText.Whole(FileText.Read(Gel));
        Assert.Equal(plain, FileText.Whole(FileText.Read("\uFEFF" + Gel)));
        Assert.Equal(plain, FileText.Whole(FileText.Read(Gel.ReplaceLineEndings("\r\n"))));
        Assert.Equal(plain, FileText.Whole(FileText.Read(Gel.ReplaceLineEndings("\r"))));
        Assert.Equal(plain, FileText.Whole(FileText.Read(Gel.TrimEnd())));
    }

    [Fact]
    public void Capitals_and_spaces_around_names_and_cells_make_no_difference()
        => Assert.Equal(
            FileText.Whole(FileText.Read(Head + "thickener,added_g,note\nTA,0.6,ok\n")),
            FileText.Whole(FileText.Read("\n  #BASE_G:120\n#\n###\n# Thickener :  TA ;\n\n Thickener , Added_G ,NOTE\n TA , 0.6 , ok\n")));

    [Fact]
    public void Quoted_notes_keep_commas_quotes_and_lines()
        => Assert.Equal(
            [new Entry.Noted("a \"thin\", \r\nwet film ")],
            FileText.Read(Head + "note,ph\n\"a \"\"thin\"\", \r\nwet film \",\n").Run.Entries);

    [Fact]
    public void Empty_rows_are_passed_over_and_short_rows_are_full_of_nothing()
    {
        var file = FileText.Read(Head + "thickener,added_g,wait_s,viscosity_mpas,note\n\n,,,,\nTA,0.6\n ,\"\",\n,,60,850\n");
        Assert.Equal(2, file.Rows.Length);
        Assert.Equal(2, file.Run.Entries.Length);
    }

    [Fact]
    public void Void_rows_stay_and_neither_count_nor_bind()
    {
        const string Rows = "wait_s,viscosity_mpas,taken_g,void\n60,850,,\n600,9000,5000,wrong pot\n60,860,,\n";
        var run = FileText.Read(Head + Rows).Run;
        Assert.Equal("-|wrong pot|wrong pot|-", string.Join('|', run.Entries.Select(e => e.VoidReason ?? "-")));
        Assert.Equal(120, run.PotNow().Total.Grams);
    }

    [Fact]
    public void Standing_time_starts_anew_with_each_step()
    {
        var file = FileText.Read(Head + "thickener,added_g,let_down_g,water_g,wait_s,ph\n"
            + ",,,,90,8\n,,,,90,8\nTA,1,,,30,8\n,,5,,20,8\n,,,5,10,8\n,,,,,8\n,,,,10,8\n");
        Assert.Equal(7, file.Rows.Count(r => r.EntryCount > 0));
    }

    [Theory]
    [InlineData("2026-03-02T09:15:00+01:00", 9, 15, 0, 0, 60)]
    [InlineData("2026-03-02T09:15-03:30", 9, 15, 0, 0, -210)]
    [InlineData("2026-03-02T23:59:59.5Z", 23, 59, 59, 500, 0)]
    public void A_time_has_its_offset(string text, int hour, int minute, int second, int millisecond, int offset)
        => Assert.True(new DateTimeOffset(2026, 3, 2, hour, minute, second, millisecond, TimeSpan.FromMinutes(offset))
            .EqualsExact(Assert.Single(FileText.Read($"# base_g: 1\ntime,note\n{text},x\n").Run.Entries).Time!.Value));

    [Fact]
    public void What_the_format_does_not_know_is_kept_and_named()
    {
        const string Text = "# bench: 4\n# base_g: 120\n# bench: 5\n# thickener: TA; colour=white; active_pct=30\n# tolerance_pct: 10\n"
            + "bath_c,thickener,added_g,who\n21.50,TA,1,  \"A, B\"\n,,,C\n";
        var file = FileText.Read(Text);
        Assert.Equal([new UnknownKey("bench", "4"), new("bench", "5")], file.UnknownKeys);
        Assert.Equal([new UnknownTrait("TA", "colour", "white")], file.UnknownTraits);
        Assert.Equal("bath_c|who", string.Join('|', file.UnknownColumns));
        Assert.Equal("21.50|A, B/|C", string.Join('/', file.Rows.Select(r => string.Join('|', r.Unknown))));
        Assert.Equal(Percentage.FromPercent(10), file.UnusedTolerance);
        Assert.Equal(
            [
                "pot.csv, line 1: key 'bench' is unknown; it is kept, not used",
                "pot.csv, line 3: key 'bench' is unknown; it is kept, not used",
                "pot.csv, line 4: 'colour' of thickener TA is unknown; it is kept, not used",
                "pot.csv, line 5: tolerance_pct has no target_mpas to go with; it is kept, not used",
                "pot.csv, line 6: column 'bath_c' is unknown; it is kept, not used",
                "pot.csv, line 6: column 'who' is unknown; it is kept, not used",
            ],
            file.Warnings);
    }

    [Fact]
    public void Stirring_without_a_reading_is_left_out_with_a_warning()
        => Assert.Equal(
            ["pot.csv, line 4: stir_s and wait_s of a row without a reading (and in 1 more) are ignored"],
            FileText.Read(Head + "added_g,stir_s,wait_s,ph\n1,10,0,\n1,10,60,8\n1,,5,\n").Warnings);

    private static InstrumentValue? Value(string text)
        => Assert.IsType<Entry.Measured>(Assert.Single(FileText.Read(Head + text).Run.Entries)).Reading.Value;

    private static Reading Direct(double viscosity, double stir, double wait, double temperature, double? ph, double? mm) => new()
    {
        Value = new InstrumentValue.Direct(Viscosity.FromMilliPascalSeconds(viscosity)),
        Stir = TimeSpan.FromSeconds(stir),
        Wait = TimeSpan.FromSeconds(wait),
        Temperature = Temperature.FromCelsius(temperature),
        Acidity = ph is { } a ? Acidity.FromPh(a) : null,
        StringLength = mm is { } l ? Length.FromMillimeters(l) : null,
    };
}
