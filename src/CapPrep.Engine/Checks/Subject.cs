using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks;

/// <summary>What the checks look at: one tape, seated or not, with its ticket and everything of the catalog.</summary>
internal sealed class Subject
{
    private readonly CapPoints? _points;
    private readonly SeatedDesign? _seated;

    internal Subject(Tape tape, StitchSequence stitches, ResolvedTicket ticket, Setup setup, SeatedDesign? seated)
    {
        (Tape, Stitches, Ticket, Setup, _seated) = (tape, stitches, ticket, setup, seated);
        _points = seated is null ? null : CapPoints.Of(stitches, seated);
    }

    internal Tape Tape { get; }

    internal StitchSequence Stitches { get; }

    internal ResolvedTicket Ticket { get; }

    internal Setup Setup { get; }

    internal SeatedDesign? SeatedOrNull => _seated;

    internal bool IsSeated => _seated is not null;

    /// <summary>Only for checks that ask for a seated design.</summary>
    internal SeatedDesign Seated => _seated ?? throw new EngineFaultException("A check of the cap met an unseated design.");

    /// <summary>Only for checks that ask for a seated design.</summary>
    internal CapPoints Points => _points ?? throw new EngineFaultException("A check of the cap met an unseated design.");

    /// <summary>False for sides, backs and visors: seams, eyelets and posts of the front do not concern them.</summary>
    internal bool LiesOnFront => Seated.Zone.OriginXMm is not null;

    /// <summary>A point of the zone as seen from the middle of the front and of the frame.</summary>
    internal TapePoint InFrame(TapePoint inZone) => inZone with { X = inZone.X + SewableArea.XInFrame(Seated.Zone) };

    /// <summary>The needle points <paramref name="first"/> to <paramref name="last"/>, counted from 0, as a place.</summary>
    internal Place PlaceOf(int first, int last) => new(PlaceKind.CapFront)
    {
        BoxMm = Points.BoxOf(first, last).ToMillimeters(),
        Blocks = [.. Enumerable.Range(Stitches.Block[first], Stitches.Block[last] - Stitches.Block[first] + 1)],
        Stitches = new StitchRange(first + 1, last + 1),
    };

    /// <summary>The whole design as a place.</summary>
    internal Place WholeDesign() => PlaceOf(0, Stitches.Count - 1);

    internal static Place InTicket(string pointer) => new(PlaceKind.Ticket) { Pointer = pointer };
}
