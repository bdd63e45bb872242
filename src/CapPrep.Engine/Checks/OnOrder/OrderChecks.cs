using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnOrder;

/// <summary>
/// What the order rules say of the order that is judged: the received one, or the proposed one when that is sewn. A
/// share that no order can lower is a note for the digitizer, since nobody else can help it.
/// </summary>
internal static class OrderChecks
{
    // Elements listed of a line.
    private const int MostElements = 20;

    internal static readonly Check BottomUp = OrderCheck(OrderRuleIds.BottomUp, LowDesignIsSilent, "Sewn from the top down");

    internal static readonly Check CenterOut = OrderCheck(OrderRuleIds.CenterOut, _ => false, "Sewn from the sides inward");

    internal static readonly Check TaglineFirst = new(OrderRuleIds.TaglineFirst, Needs.SeatedDesign, (subject, _) => Late(subject, OrderRuleIds.TaglineFirst), SayTagline)
    {
        AskAgain = Again.OfNewOrder,
    };

    internal static readonly Check TextLines = new(OrderRuleIds.TextLine, Needs.SeatedDesign, (subject, _) => Inward(subject), SayTextLine)
    {
        AskAgain = Again.OfNewOrder,
    };

    internal static readonly Check NotSettled = new(
        OrderRuleIds.NotSettled,
        Needs.SeatedDesign,
        (subject, _) => Noted(subject, OrderRuleIds.NotSettled),
        _ => "Read again, the new tape would be put in another order once more.");

    internal static readonly Check ShiftDisagrees = new(
        OrderRuleIds.ShiftDisagrees,
        Needs.SeatedDesign,
        (subject, _) => Noted(subject, OrderRuleIds.ShiftDisagrees),
        report => $"Order rules and sheet model differ: the new order moves the cloth {Figure.Plain(report.Measured, 2)} times as far.");

    internal static readonly IReadOnlyList<Check> All =
    [
        TaglineFirst, BottomUp, CenterOut, TextLines, NotSettled, ShiftDisagrees, .. Rows.RowChecks.All, Rings.RingCheck.Check, Returns.BackAgain.Check,
    ];

    private static IEnumerable<Occurrence> Noted(Subject subject, string rule) =>
        subject.OrderRules?.FirstOrDefault(result => result.Rule == rule) is { } result
            ? [new Occurrence(subject.WholeDesign()) { Measured = result.Share, Level = Severity.Note }]
            : [];

    private static Check OrderCheck(string rule, Func<RuleAndSubject, bool> isSilent, string opening) => new(
        rule,
        Needs.SeatedDesign,
        (subject, inForce) => isSilent(new(subject, inForce)) ? [] : Late(subject, rule),
        report => Say(opening, report))
    {
        AskAgain = Again.OfNewOrder,
    };

    private static bool LowDesignIsSilent(RuleAndSubject judged) =>
        judged.Subject.Seated.Box.Height < judged.Rule.Parameter("silentBelowMm") * Measures.Tenths.PerMillimeter;

    private static IEnumerable<Occurrence> Late(Subject subject, string rule)
    {
        if (subject.OrderRules?.FirstOrDefault(result => result.Rule == rule) is not { Severity: { } severity } result)
            return [];
        var level = result.HeldBy == HeldBy.Nothing ? severity : Severity.Note;
        var places = result.Late.Count == 0 ? [subject.WholeDesign()] : result.Late.Select(late => PlaceOf(subject, late));
        return places.Select(place => new Occurrence(place)
        {
            Measured = result.Share,
            Level = level,
            Text = Held(result.HeldBy),
        });
    }

    private static Place PlaceOf(Subject subject, LateElement late)
    {
        var element = subject.Reading.Elements[late.Element];
        return subject.PlaceOf(element.First, element.Last) with { Elements = [late.Element + 1] };
    }

    private static IEnumerable<Occurrence> Inward(Subject subject) =>
        subject.OrderRules?.FirstOrDefault(result => result.Rule == OrderRuleIds.TextLine) is { Severity: { } severity } result
            ? result.Lines.Select(line => new Occurrence(PlaceOf(subject, line.Elements)) { Measured = line.Share, Level = severity })
            : [];

    private static Place PlaceOf(Subject subject, IReadOnlyList<int> line)
    {
        var elements = line.Select(element => subject.Reading.Elements[element]).ToList();
        var place = subject.PlaceOf(elements.Min(element => element.First), elements.Max(element => element.Last));
        return place with
        {
            BoxMm = elements.Select(element => Placement.Of(subject.Seated).OnCap(element.Box)).Aggregate((sum, next) => sum.Union(next)).ToMillimeters(),
            Elements = [.. line.Take(MostElements).Select(element => element + 1)],
        };
    }

    private static string Held(HeldBy heldBy) => heldBy switch
    {
        HeldBy.Layers => " What lies on top of it holds it there.",
        HeldBy.Colors => " Only another order of the colors could help.",
        _ => "",
    };

    private static string Say(string opening, Report report) =>
        $"{opening}: {Percent(report)} of what the order can decide is the wrong way round.{report.Worst.Text}";

    private static string SayTagline(Report report) =>
        $"The bottom line is not sewn first: {Percent(report)} of what should follow it comes before it.";

    private static string SayTextLine(Report report) =>
        $"A text line is sewn from end to end: {Percent(report)} of its letters run toward the seam instead of away from it.";

    private static string Percent(Report report) => $"{Figure.Plain(100 * report.Measured, 0)} %";

    private sealed record RuleAndSubject(Subject Subject, RuleInForce Rule);
}
