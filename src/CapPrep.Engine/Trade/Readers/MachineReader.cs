using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

internal static class MachineReader
{
    private const int MostHeads = 60;
    private const int MostNeedles = 30;

    internal static Machine? Read(ObjectReader reader, ReadOnlyMemory<byte> body)
    {
        reader.Require("id", "name", "heads", "needles", "fieldMm", "capFrames", "speed", "stops", "tape", "nudge", "sources");
        var machine = Fixed(reader, body) with
        {
            Threads = reader.Objects("threads", 0, MostNeedles, Thread) ?? [],
            AddsTies = reader.Flag("addsTies") ?? false,
            BrimUpOnMachine = reader.Flag("brimUpOnMachine") ?? true,
            MaxStitches = reader.Integer("maxStitches", 1000, 100_000_000),
            MaxStops = reader.Integer("maxStops", 1, 10_000),
            HeadsOff = reader.Integers("headsOff", MostHeads, 1, MostHeads),
            HeadOffsets = reader.Objects("headOffsets", 0, MostHeads, Offset) ?? [],
        };
        CheckNumbering(reader, machine);
        return machine;
    }

    private static Machine Fixed(ObjectReader reader, ReadOnlyMemory<byte> body) => new()
    {
        Id = reader.Id("id") ?? "",
        Name = reader.Text("name", 80) ?? "",
        Heads = reader.Integer("heads", 1, MostHeads) ?? MostHeads,
        Needles = reader.Integer("needles", 1, MostNeedles) ?? MostNeedles,
        FieldMm = reader.Object("fieldMm", Field)!,
        CapFrames = reader.Ids("capFrames", 1, 50),
        Speed = reader.Object("speed", Speed)!,
        Stops = reader.Object("stops", Stops)!,
        Tape = reader.Object("tape", MachineTapeReader.Read)!,
        Nudge = reader.Choice("nudge", Words<Nudge>.Standard) ?? default,
        Sources = reader.Sources(body),
    };

    private static void CheckNumbering(ObjectReader reader, Machine machine)
    {
        if (machine.Threads.Any(thread => thread.Needle > machine.Needles))
            reader.Contradicts("threads", $"A thread is on a needle that the machine does not have: it has {machine.Needles}.");
        if (machine.Threads.DistinctBy(thread => thread.Needle).Count() < machine.Threads.Count)
            reader.Contradicts("threads", "Two threads are on the same needle.");
        if (machine.HeadsOff.Any(head => head > machine.Heads))
            reader.Contradicts("headsOff", $"A head is off that the machine does not have: it has {machine.Heads}.");
        if (machine.HeadsOff.Distinct().Count() >= machine.Heads)
            reader.Contradicts("headsOff", "No head is left to sew with.");
        if (machine.HeadOffsets.Any(offset => offset.Head > machine.Heads))
            reader.Contradicts("headOffsets", $"An offset is for a head that the machine does not have: it has {machine.Heads}.");
    }

    private static FieldSize? Field(ObjectReader reader)
    {
        reader.Require("width", "height");
        return new(reader.Number("width", 20, 1000) ?? 0, reader.Number("height", 20, 1000) ?? 0);
    }

    private static MachineSpeed? Speed(ObjectReader reader)
    {
        reader.Require("maxSpm", "capSpm");
        var most = reader.Integer("maxSpm", 100, 3000);
        var onCaps = reader.Integer("capSpm", 100, 3000);
        if (onCaps > most)
            reader.Contradicts("capSpm", "The speed on caps is above the machine's highest.");
        return new(most ?? 0, onCaps ?? 0);
    }

    private static MachineStops? Stops(ObjectReader reader)
    {
        reader.Require("trimSeconds", "colorChangeSeconds", "breaksPer100000Stitches", "breakSeconds");
        return new()
        {
            TrimSeconds = reader.Number("trimSeconds", 0, 600) ?? 0,
            ColorChangeSeconds = reader.Number("colorChangeSeconds", 0, 600) ?? 0,
            BreaksPer100000Stitches = reader.Number("breaksPer100000Stitches", 0, 1000) ?? 0,
            BreakSeconds = reader.Number("breakSeconds", 0, 3600) ?? 0,
            BobbinChangeSeconds = reader.Number("bobbinChangeSeconds", 0, 3600) ?? 0,
            FrameSwapSecondsPerHead = reader.Number("frameSwapSecondsPerHead", 0, 3600) ?? 0,
            SwapSeconds = reader.Number("swapSeconds", 0, 36_000) ?? 0,
        };
    }

    private static NeedleThread? Thread(ObjectReader reader)
    {
        reader.Require("needle");
        return new(
            reader.Integer("needle", 1, MostNeedles) ?? 0,
            reader.Text("code", 40),
            reader.Text("name", 60),
            reader.Color("color"),
            reader.Integer("weightWt", 20, 100));
    }

    private static HeadOffset? Offset(ObjectReader reader)
    {
        reader.Require("head", "xMm", "yMm");
        return new(
            reader.Integer("head", 1, MostHeads) ?? 0,
            reader.Number("xMm", -20, 20) ?? 0,
            reader.Number("yMm", -20, 20) ?? 0);
    }
}
