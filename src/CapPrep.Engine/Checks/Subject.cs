using CapPrep.Engine.Checks.Ground;
using CapPrep.Engine.Checks.OnBorders;
using CapPrep.Engine.Checks.OnTechnique.Applique;
using CapPrep.Engine.Checks.OnTechnique.Foam;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Production;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks;

/// <summary>What the checks look at: one tape, seated or not, with its ticket and everything of the catalog.</summary>
internal sealed class Subject
{
    private const int MostElements = 20;

    private readonly CapPoints? _points;
    private readonly SeatedDesign? _seated;
    private readonly Lazy<DesignReading> _reading;
    private readonly Lazy<GroundMap> _ground;
    private readonly Lazy<FoamPieces> _foam;
    private readonly Lazy<IReadOnlyList<AppliqueShape>> _applique;
    private readonly Lazy<IReadOnlyList<DeliberateStop>> _stops;
    private readonly Lazy<IReadOnlyList<TextLine>> _textLines;
    private readonly Lazy<IReadOnlyList<Border>> _borders;

    internal Subject(Tape tape, StitchSequence stitches, ResolvedTicket ticket, Setup setup, SeatedDesign? seated)
    {
        (Tape, Stitches, Ticket, Setup, _seated) = (tape, stitches, ticket, setup, seated);
        _reading = new(() => DesignReader.Read(stitches, ThreadNumbers.Of(NeedlePlan.ThreadsOf(ticket.Received), stitches.Blocks)), LazyThreadSafetyMode.None);
        _points = seated is null ? null : CapPoints.Of(stitches, seated);
        _ground = new(() => new GroundMap(Reading), LazyThreadSafetyMode.None);
        _foam = new(() => FoamPieces.Of(Reading, stitches, ticket), LazyThreadSafetyMode.None);
        _applique = new(() => OnTechnique.Applique.AppliqueShapes.Of(Reading, stitches, ticket.Technique), LazyThreadSafetyMode.None);
        _stops = new(() => Sequence.Planning.DeliberateStops.Of(this), LazyThreadSafetyMode.None);
        _borders = new(() => BorderFinder.Find(this), LazyThreadSafetyMode.None);
        _textLines = new(() => _points is null ? [] : LineFinder.Find(stitches, Reading, _points), LazyThreadSafetyMode.None);
    }

    private Subject(Subject like, Setup setup, SeatedDesign seated)
        : this(like.Tape, like.Stitches, like.Ticket, setup, seated) =>
        (_reading, _ground, _foam, _applique, _stops, _borders) = (like._reading, like._ground, like._foam, like._applique, like._stops, like._borders);

    private Subject(Subject like, Lazy<IReadOnlyList<TextLine>> textLines)
    {
        (Tape, Stitches, Ticket, Setup) = (like.Tape, like.Stitches, like.Ticket, like.Setup);
        (_seated, _points, _reading) = (like._seated, like._points, like._reading);
        (_ground, _foam, _textLines) = (like._ground, like._foam, textLines);
        (_applique, _stops, _borders) = (like._applique, like._stops, like._borders);
    }

    internal Tape Tape { get; }

    internal StitchSequence Stitches { get; }

    internal ResolvedTicket Ticket { get; }

    internal Setup Setup { get; }

    internal SeatedDesign? SeatedOrNull => _seated;

    internal bool IsSeated => _seated is not null;

    /// <summary>Its pieces and elements; read when first asked for.</summary>
    internal DesignReading Reading => _reading.Value;

    /// <summary>What lies under and over its pieces.</summary>
    internal GroundMap Ground => _ground.Value;

    /// <summary>What of it is sewn over foam.</summary>
    internal FoamPieces Foam => _foam.Value;

    /// <summary>Lines along one edge with satin over them, as fabric is laid, held and covered.</summary>
    internal IReadOnlyList<AppliqueShape> AppliqueShapes => _applique.Value;

    /// <summary>Stops at which a person does something.</summary>
    internal IReadOnlyList<DeliberateStop> DeliberateStops => _stops.Value;

    /// <summary>Which fills have borders.</summary>
    internal IReadOnlyList<Border> Borders => _borders.Value;

    /// <summary>Its lines of letters, from the lowest up; none for a design that lies on no cap.</summary>
    internal IReadOnlyList<TextLine> TextLines => _textLines.Value;

    /// <summary>What the order rules say of the order that is judged; null: nothing was worked out.</summary>
    internal IReadOnlyList<OrderRuleResult>? OrderRules { get; private init; }

    private IReadOnlyList<int>? NewOrder { get; init; }

    /// <summary>Indices of the elements in the order that is judged.</summary>
    internal IReadOnlyList<int> SewnOrder => NewOrder ?? [.. Enumerable.Range(0, Reading.Elements.Count)];

    /// <summary>The same tape, judged by an order.</summary>
    /// <param name="orderRules">What the order rules say of it; null: nothing was worked out.</param>
    /// <param name="order">Indices of the elements; null: the received order.</param>
    internal Subject With(IReadOnlyList<OrderRuleResult>? orderRules, IReadOnlyList<int>? order = null) =>
        new(this, _textLines) { OrderRules = orderRules, NewOrder = order };

    /// <summary>The same tape, with its lines of letters known from elsewhere.</summary>
    internal Subject With(IReadOnlyList<TextLine> textLines) => new(this, new(textLines));

    /// <summary>The same tape, read once, on another cap.</summary>
    internal Subject On(Setup setup, SeatedDesign seated) => new(this, setup, seated);

    /// <summary>Only for checks that ask for a seated design.</summary>
    internal SeatedDesign Seated => _seated ?? throw new EngineFaultException("A check of the cap met an unseated design.");

    /// <summary>Only for checks that ask for a seated design.</summary>
    internal CapPoints Points => _points ?? throw new EngineFaultException("A check of the cap met an unseated design.");

    /// <summary>False for sides, backs and visors: seams, eyelets and posts of the front do not concern them.</summary>
    internal bool LiesOnFront => Seated.Zone.OriginXMm is not null;

    /// <summary>A point of the zone as seen from the middle of the front and of the frame.</summary>
    internal TapePoint InFrame(TapePoint inZone) => inZone with { X = inZone.X + SewableArea.XInFrame(Seated.Zone) };

    /// <summary>Lower left corner of a cell of a cover as it lies on the cap, tape units; turned, its upper right one.</summary>
    internal TapePoint CellOnCap(int column, int row) =>
        Placement.Of(Seated).OnCap(Stitches.Grid.Corner(column, row));

    /// <summary>The needle points <paramref name="first"/> to <paramref name="last"/>, counted from 0, as a place.</summary>
    internal Place PlaceOf(int first, int last) => new(PlaceKind.CapFront)
    {
        BoxMm = Points.BoxOf(first, last).ToMillimeters(),
        Elements = ElementsOf(first, last),
        Blocks = [.. Enumerable.Range(Stitches.Block[first], Stitches.Block[last] - Stitches.Block[first] + 1)],
        Stitches = new StitchRange(first + 1, last + 1),
    };

    /// <summary>Numbers, from 1, of the elements that have a penetration in it; none when there are too many to look at.</summary>
    private int[] ElementsOf(int first, int last)
    {
        int[] met = [.. Reading.Elements.Where(element => element.First <= last && element.Last >= first).Take(MostElements + 1).Select(element => element.Index + 1)];
        return met.Length > MostElements ? [] : met;
    }

    /// <summary>The whole design as a place.</summary>
    internal Place WholeDesign() => PlaceOf(0, Stitches.Count - 1);

    internal static Place InTicket(string pointer) => new(PlaceKind.Ticket) { Pointer = pointer };
}
