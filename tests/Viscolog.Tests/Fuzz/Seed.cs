namespace Viscolog.Tests.Fuzz;

/// <summary>Inputs to begin with: small ones that hold much of what each format knows.</summary>
internal static class Seed
{
    public const string Run = """"
        # viscolog-run: 1
        # name: pot
        # base: B
        # base_g: 150
        # base_density_g_ml: 1.1
        # thickener: TA; chemistry=clay; range_pct=0.5-4; active_pct=30; density_g_ml=1.2; price_per_kg=3.5; dilution=1:1; mood=good
        # target_mpas: 9000
        # tolerance_pct: 12
        # repeatability_pct: 3
        # mood: fair
        time,taken_g,let_down_g,water_g,thickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c,ph,fault,note,void,replaces,mood
        2026-03-02T09:15:00+01:00,,,,,,0,60,640,22.8,8.7,,base,,,a
        ,,,,TA,0.90,15,60,1180,22.9,,lumps,,wrong,,
        ,,,,TA,0.90,15,60,1190,22.9,,,"two
        lines, ""quoted""",,above,
        ,5,20,3,,,,,,,,,,,,x

        """";

    public const string Pair = """
        # base_g: 100
        # thickener: TA
        # thickener: TU; range_pct=0.1-2
        # target_low_mpas: 800
        # target_high_mpas: 1000
        # target_string_mm: 20-40
        # method: rotational
        # factor_mpas_per_pct: 100
        thickener,added_pct,stir_s,wait_s,torque_pct,rpm,temp_f,string_mm
        ,,0,30,12.5,20,73,
        TU,0.2,10,30,22.5,20,73,25
        TA,1,10,30,42.5,20,73,28

        """;

    public const string Decimal = "# base_g: 100,5\r\n# thickener: T; density_g_ml=1,2\r\n# method: iso-2431-4\r\n"
        + "added_ml;wait_s;cup_s\r\n;60;33,5\r\n1,5;60;44\r\n";

    private const string FirstCells =
        """<c r="A4" t="str"><v>thickener</v></c><c r="B4" t="str"><v>added_g</v></c><c r="C4" t="str"><v>wait_s</v></c>"""
        + """<c r="D4" t="str"><v>viscosity_mpas</v></c><c r="E4" t="str"><v>ph</v></c><c r="F4" t="str"><v>note</v></c>""";

    private const string LastCells =
        """<c r="A6" t="str"><v>TA</v></c><c r="B6"><v>0.9</v></c><c r="C6"><v>60</v></c><c r="D6"><f>1+1</f><v>1.18E3</v></c>"""
        + """<c r="F6" t="inlineStr"><is><t xml:space="preserve">=1+1_x000D_ </t></is></c>""";

    public const string Sheet = $"""
        <row r="1"><c r="A1" t="inlineStr"><is><t># base_g:</t></is></c><c r="B1"><v>150.5</v></c></row>
        <row r="2"><c r="A2" t="str"><v># thickener: TA; range_pct=0.5-4</v></c></row>
        <row r="4">{FirstCells}</row>
        <row r="5"><c r="C5"><v>60</v></c><c r="D5" s="2"><v>640</v></c><c r="F5" t="s"><v>0</v></c></row>
        <row r="6">{LastCells}</row>

        """;

    private const string MaterialNames = "kind,name,chemistry,range_pct,active_pct,density_g_ml,price_per_kg,method,repeatability_pct,"
        + "base,thickener,target_mpas,tolerance_pct,ph,note,retired,mood";

    public const string Materials = $"""
        # viscolog-materials: 1
        {MaterialNames}
        base,B,,,,1.06,,,,,,,,,invented,,
        thickener,T,alkali-swellable,1-5,30,1.05,7.8,,,,,,,,slowly,yes,
        method,cup,,,,,,direct,3.5,,,,,,,,x
        specification,gel,,,,,,direct,,B,T,9000,15,8.5-9.2,"a, b",,

        """;

    public const string Oils = """
        # viscolog-oils: 1
        date,method,oil,certified_mpas,certified_temp_c,uncertainty_pct,viscosity_mpas,temp_c,note,void,mood
        2026-09-07,direct,Nacre,1012,25,0.5,1019,25.1,,,
        2026-11-16,direct,Nacre,1012,25,0.5,1051,25.0,after,wrong,x

        """;

    public const string Flow = "# name: sweep\n# temp_c: 23\nshear_rate_1_s,viscosity_pas,note\n"
        + "1,11.38,\n2,6.669,\n5,3.432,x\n10,2.191,\n20,1.446,\n50,0.8486,\n";

    public const string Speeds = """
        # geometry: concentric-cylinder
        # bob_radius_mm: 13.33
        # cup_radius_mm: 14.46
        # bob_length_mm: 40
        # end_factor: 1.1
        # full_scale_mnm: 5
        rpm,torque_pct
        1,6.01
        2,8.493
        4,12.04
        8,17
        16,24

        """;

    public const string Trend = "# name: gel\n# low: 7650\n# high: 10350\n"
        + "batch,viscosity_mpas,note,void\n01,9020,,\n02,9190,x,\n03,8820,,wrong\n04,9140,,\n";

    public const string Journal = """
        1 {"kind":"log","version":1,"log":"01a2127e-7999-7ff0-b307-22673df4db2e","at":"2026-11-25T11:36:48.282Z"} 92f6b827
        2 {"kind":"batch","lines":8,"at":"2026-11-25T11:36:48.553Z"} 383ddadd

        """;

    public const string Seal = "viscolog-seal 1\njournal 1575 92f6b827\ncopy 81920 0123456789abcdef0123456789abcdef\nsum 00000000\n";

    public const string Game = "{\"schema\":\"viscolog.practice-game/1\",\"player\":\"A\",\"pot\":\"easy\",\"seed\":7,"
        + "\"ended\":\"2026-11-25T11:36:48+00:00\",\"verdict\":\"in band\",\"doses\":2,\"readings\":3,\n"
        + "\"waits\":2,\"early_doses\":0,\"over_at_dose\":1,\"body_mpas\":9000.5,\"target_mpas\":9000,"
        + "\"poured_g\":4,\"wasted_g\":0.1,\"base_g\":100,\"base_to_save_g\":0,\"time_s\":240,\n"
        + "\"moves\":[\"read\",\"dose=2\",\"stir=10\",\"wait=60\",\"read\",\"end\"],"
        + "\"advised_verdict\":\"in band\",\"advised_doses\":2,\"advised_waits\":2,\"advised_wasted_g\":0}";

    public static readonly string[] Records =
    [
        "{\"kind\":\"log\",\"version\":1,\"log\":\"01a2127e-7999-7ff0-b307-22673df4db2e\",\"at\":\"2026-11-25T11:36:48.282Z\"}",
        "{\"kind\":\"run\",\"run\":1,\"id\":\"01a2127e-7999-7ff0-b307-22673df4db2e\","
            + "\"header\":[\"name: pot\",\"base_g: 120\",\"thickener: TA; range_pct=1-5\"],\"columns\":[\"mood\"]}",
        "{\"kind\":\"row\",\"run\":1,\"row\":2,\"is\":{\"thickener\":\"TA\",\"added_g\":0.9,\"stir_s\":15,\"wait_s\":60,"
            + "\"viscosity_mpas\":1180,\"unknown\":[\"x\"]},\"after\":1}",
        "{\"kind\":\"void\",\"run\":1,\"row\":2,\"reason\":\"wrong\"}",
        "{\"kind\":\"material\",\"is\":{\"kind\":\"base\",\"name\":\"B\",\"cells\":{\"density_g_ml\":\"1.1\"}}}",
        "{\"kind\":\"oil\",\"oil\":1,\"is\":{\"date\":\"2026-09-07\",\"method\":\"direct\",\"oil\":\"N\"}}",
        "{\"kind\":\"oil-void\",\"oil\":1,\"reason\":\"wrong\"}",
        "{\"kind\":\"batch\",\"lines\":8}",
        "{\"kind\":\"end\"}",
    ];

    public static readonly string[] Typed =
    [
        "dose=2", "stir=10", "wait=60", "read", "base=20", "end", "5 kg", "750 mL", "10L", "1e3", "-2.5", "2026-03-02T09:15:00+01:00",
        "name: pot\nbase_g: 120",
    ];
}
