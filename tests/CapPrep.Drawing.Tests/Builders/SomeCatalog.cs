using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Tests.Builders;

internal static class SomeCatalog
{
    private static readonly IReadOnlyDictionary<string, string> NoSources = new Dictionary<string, string>();

    public static Setup Setup(bool withStyle) => new()
    {
        Style = withStyle ? Style() : null,
        StyleSuggestions = withStyle ? [] : ["six-panel-mid", "six-panel-low"],
        Frame = Frame(),
        Machine = Machine(),
        Station = Station(),
        Rules = new EffectiveRules([], new OrderSettings(), new VersionedId("house", 1)),
    };

    public static CapStyle Style() => new()
    {
        Id = "six-panel-mid",
        Name = "Six-panel structured, mid crown",
        Panels = 6,
        Structure = CrownStructure.Structured,
        CrownHeightMm = 170,
        CircumferenceMm = 580,
        CenterSeam = new CenterSeam(8, 8, 1, 6),
        Seams =
        [
            new CapSeam("center", [new PointMm(0, 0), new PointMm(0, 170)]),
            new CapSeam("side", [new PointMm(-96, 15), new PointMm(-87, 50), new PointMm(-74, 75)]),
            new CapSeam("side", [new PointMm(96, 15), new PointMm(87, 50), new PointMm(74, 75)]),
        ],
        Eyelets = [new Eyelet(-37, 82, 4), new Eyelet(37, 82, 4)],
        Brim = new Brim("curved", 3, 70, 185),
        FrontView = new FrontView(92, 12),
        Zones =
        [
            new Zone
            {
                Location = CapLocation.Front,
                Origin = "center seam, brim seam",
                OutlineMm = [new PointMm(-75, 8), new PointMm(75, 8), new PointMm(68, 50), new PointMm(30, 73), new PointMm(0, 76), new PointMm(-30, 73), new PointMm(-68, 50)],
                Height = new TwoLimits(55, 63.5),
                Width = new TwoLimits(127, 150),
                BrimClearance = new BrimClearance(13, 10),
                BorderMm = 5,
            },
        ],
        Sewing = new SewingAdvice
        {
            SpeedSpm = 650,
            Needle = "75/11 sharp",
            Backing = "cap tearaway, 85 to 100 g/m2",
            BackingWidthMm = 100,
            BackingHeightMm = 300,
            Soften = true,
            Softening = "steam the seam, press it flat",
        },
        Framing = new FramingAdvice(45, 0.8, "seam"),
        SizeRange = "56 to 60 cm",
        Sources = NoSources,
    };

    public static Machine Machine() => new()
    {
        Id = "eight-head",
        Name = "Eight-head",
        Heads = 8,
        Needles = 12,
        FieldMm = new FieldSize(360, 80),
        CapFrames = ["wide"],
        Speed = new MachineSpeed(1000, 700),
        Stops = new MachineStops { TrimSeconds = 6, ColorChangeSeconds = 10, BreaksPer100000Stitches = 4, BreakSeconds = 60 },
        Tape = new MachineTape(TrimBy.Jumps, 3, TrimPattern.Spread, 12.1, TurnedBy.Machine),
        Nudge = Nudge.All,
        HeadsOff = [5],
        Sources = NoSources,
    };

    private static CapFrame Frame() => new()
    {
        Id = "wide",
        Name = "Wide cap frame",
        FieldMm = new BoxMm(-178, 5, 178, 81),
        ArcDegrees = 270,
        Holds = FrameHold.StrapAndPosts,
        StrapTopMm = 6,
        PostsXMm = [-90, 90],
        SidesHeldBelowMm = 45,
        SetsOwned = 2,
        Numbers = ["1", "2", "3", "4", "5", "6", "7", "8"],
        Gauge = "wide gauge",
        Locations = [CapLocation.Front],
        Sources = NoSources,
    };

    private static FramingStation Station() => new()
    {
        Id = "gauge-1",
        Name = "Gauge 1",
        Persons = 1,
        SecondsPerCap = 45,
        SoftenSecondsPerCap = 15,
        Scatter = new StationScatter(0.8, 0.8, 0.7, "house", 0),
        Tolerance = new StationTolerance(1.5, 3, 6.4, 1, 2),
        Sources = NoSources,
    };
}
