using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tests.Revisions;

/// <summary>Two tapes for the same order line, one after the other.</summary>
internal static class Revised
{
    internal static readonly Box Left = new(-300, 0, -140, 160);
    internal static readonly Box Middle = new(-80, 0, 80, 160);
    internal static readonly Box Right = new(140, 0, 300, 160);

    /// <summary>A fill for each box, cut apart or in a color of its own.</summary>
    internal static Tape Boxes(bool colored, params Box[] boxes)
    {
        var draft = new Draft();
        for (var i = 0; i < boxes.Length; i++)
        {
            var start = new TapePoint(boxes[i].Left, boxes[i].Bottom);
            if (i > 0 && colored)
                draft.ColorStop().Move(start);
            else if (i > 0)
                draft.Trim(start);
            draft.Stitch(start).Tie(boxes[i].Center).Sew(Fill.Of(boxes[i])).Tie(boxes[i].Center);
        }

        return draft.ToTape("TEST");
    }

    internal static Tape Boxes(params Box[] boxes) => Boxes(colored: false, boxes);

    /// <summary>The second tape's report; the first was asked to change what lies in some boxes.</summary>
    internal static RevisionReport Report(Tape first, Tape second, params EarlierFinding[] asked) =>
        CapPrepper.Prepare((Job.Clean with { Tape = second }).Request() with { Earlier = Earlier(first, asked) }).Revision!;

    internal static EarlierJob Earlier(Tape tape, params EarlierFinding[] asked)
    {
        var prepared = (Job.Clean with { Tape = tape }).Prepare();
        return new EarlierJob
        {
            Id = "job_1",
            Tape = tape,
            Ticket = prepared.Ticket,
            SeatedMm = prepared.Seating!.Box.ToMillimeters(),
            Findings = asked,
        };
    }

    /// <summary>A point about the element with this number of the first tape.</summary>
    internal static EarlierFinding AskedOf(Tape tape, int element, string rule = "stitch.dense", Actor who = Actor.Digitizer)
    {
        var found = (Job.Clean with { Tape = tape }).Prepare().Reading.Elements[element - 1];
        return new(1, rule, Severity.Warn, "Mend it.", 1, who, [new Place(PlaceKind.CapFront) { Stitches = new(found.First + 1, found.Last + 1) }]);
    }

    /// <summary>The same needle points, each shifted by its own amount.</summary>
    internal static Tape Shifted(Tape tape, Func<int, TapePoint> by)
    {
        var moves = new List<TapeMove>();
        for (var record = 0; record < tape.RecordCount; record++)
            moves.Add(new(tape.Kinds[record], tape.PositionBehind(record) + by(record)));

        return Stitched.Of(moves);
    }

    internal static IEnumerable<(OutsideKind What, int? Element)> Kinds(this RevisionReport report) =>
        report.ChangedOutside.Select(change => (change.What, change.Element));
}
