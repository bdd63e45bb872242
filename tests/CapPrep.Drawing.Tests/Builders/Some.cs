using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Tests.Builders;

/// <summary>An invented order of an invented club, put together by hand.</summary>
internal static class Some
{
    public static readonly DateTimeOffset Time = new(2026, 11, 25, 8, 19, 4, 125, TimeSpan.Zero);

    public static JobFacts Job() => new()
    {
        Number = 10427,
        TapeName = "10427.DST",
        TapeSha8 = "1a2b3c4d",
        FileName = "heron-rowing-front.dst",
        Received = Time,
    };

    /// <summary>A crest of three threads: a bottom line, a filled shield and two posts.</summary>
    public static Tape Crest()
    {
        var pen = new StitchPen();
        for (var letter = -3; letter <= 3; letter++)
        {
            pen.TrimTo((letter * 80) - 25, -225).Column((letter * 80) - 25, -225, 15, 60);
            pen.Column((letter * 80) - 10, -225, 35, 15);
        }

        pen.Stop().Fill(-150, -120, 300, 300).Stop();
        pen.TrimTo(-190, -120).Column(-190, -120, 25, 340).TrimTo(165, -120).Column(165, -120, 25, 340);
        return pen.Tape();
    }

    public static Preparation Sewn(Tape? tape = null) => Made(tape ?? Crest(), seated: true) with
    {
        Verdict = Verdict.SewAsReceived,
        TapeToSew = new TapeToSew([], true, [TapeChange.Container, TapeChange.Label, TapeChange.StartEnd], new TapePoint(0, -225)),
        NeedlePlan =
        [
            new NeedleStep(1, 1, 3, Thread(1, "Sand", "#D9C7A0", "1128"), 329, StopAction.None),
            new NeedleStep(2, 2, 7, Thread(2, "Harbor blue", "#1F3F6E", "1242"), 836, StopAction.None),
            new NeedleStep(3, 3, null, Thread(3, "Heron gray", "#6E7478", "1011"), 342, StopAction.None),
        ],
    };

    public static Preparation Held(Tape? tape = null) => Made(tape ?? Crest(), seated: true) with
    {
        Verdict = Verdict.ReturnToOrderDesk,
        VerdictReasons = [new VerdictReason("place.too-tall", 1, "The design is taller than this cap style's front takes.")],
        Actors = [Actor.OrderDesk, Actor.Digitizer],
        Findings = [TooTall(), OffCenter(), Quirk()],
    };

    public static Preparation WithoutStyle() => Made(Crest(), seated: false) with
    {
        Verdict = Verdict.ReturnToOrderDesk,
        Actors = [Actor.OrderDesk],
        Findings = [UnknownStyle()],
    };

    public static TicketThread Thread(int block, string name, string color, string code) =>
        new() { Block = block, Name = name, Color = color, Code = code };

    public static Finding TooTall() => Finding(1, "place.too-tall", Severity.Hold, "The design is 44.5 mm high; this cap style takes 40 mm.") with
    {
        Measured = new Quantity(44.5, "mm"),
        Places = [OnCap(1, new BoxMm(-24, 13, 24, 57.5))],
        Remedy = new RuleRemedy(Actor.OrderDesk, "Make the design at most {limit} {unit} tall, or choose a taller cap."),
        Limit = Limit(Severity.Hold, 40),
    };

    public static Finding OffCenter() => Finding(2, "place.off-center", Severity.Warn, "The main word stands 1.6 mm to the viewer's right of the seam.") with
    {
        Places = [OnCap(2, new BoxMm(-26, 13, 26, 19)), OnCap(3, new BoxMm(16, 23, 19, 57))],
    };

    public static Finding Quirk() => Finding(3, "tape.no-end", Severity.Note, "The tape has no end record; our writer adds one.");

    private static Finding UnknownStyle() => Finding(1, "ticket.style", Severity.Hold, "No cap style carries the article number QC-900.") with
    {
        Remedy = new RuleRemedy(Actor.OrderDesk, "Name the cap style, or add the article number to one."),
    };

    private static Finding Finding(int number, string rule, Severity severity, string message) => new()
    {
        Number = number,
        Rule = rule,
        Severity = severity,
        Count = 1,
        Message = message,
        Limit = Limit(severity, null),
        Places = [],
        Asks = severity == Severity.Hold ? Asks.ReturnToOrderDesk : Asks.Nothing,
    };

    private static AppliedLimit Limit(Severity level, double? value) => new()
    {
        Is = value is null ? LimitIs.None : LimitIs.AtMost,
        Value = value,
        Unit = "mm",
        Level = level,
        Kind = LimitKind.House,
        SetBy = new VersionedId("house", 1),
    };

    private static Place OnCap(int mark, BoxMm box) => new(PlaceKind.CapFront) { Mark = mark, BoxMm = box };

    private static Preparation Made(Tape tape, bool seated)
    {
        var sequence = StitchSequence.Of(tape, 3);
        var extents = sequence.Extents();
        return new Preparation
        {
            Verdict = Verdict.ReturnToOrderDesk,
            VerdictReasons = [],
            Actors = [],
            Summary = new Summary("One load on the eight-head.", null, null, null, null),
            FirstCap = new FirstCap(FirstCapIs.Required, ["first time on this cap style"]),
            Tape = tape,
            Facts = new TapeFacts(tape.RecordCount, sequence.Count, 0, 0, 0, sequence.Blocks, 1, extents),
            Reading = DesignReader.Read(sequence),
            Ticket = SomeTicket.Resolved(),
            Setup = SomeCatalog.Setup(seated),
            Seating = seated ? Seated(extents) : null,
            Findings = [],
            ReceivedOrder = new OrderFacts(2, 9, 120),
            TapeToSew = null,
            NeedlePlan = [],
        };
    }

    private static SeatedDesign Seated(Box extents)
    {
        var offset = new TapePoint(-(extents.Left + extents.Right) / 2, 130 - extents.Bottom);
        return new SeatedDesign
        {
            Zone = SomeCatalog.Style().Zones[0],
            By = SeatingBase.Box,
            CenterBy = SeatingCenter.Box,
            Offset = offset,
            TapeIsTurned = false,
            Box = extents.Shift(offset.X, offset.Y),
            Origin = offset,
            ClearancesMm = new Clearances(13, 10, 40, 40),
            LargestScale = 1,
        };
    }
}
