using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Ids of the rules about the order of sewing.</summary>
public static class OrderRuleIds
{
    public const string BottomUp = "order.bottom-up";
    public const string CenterOut = "order.center-out";
    public const string TextLine = "order.text-line";
    public const string TaglineFirst = "order.tagline-first";

    public const string NotSettled = "order.not-settled";
    public const string ShiftDisagrees = "shift.disagrees";

    internal static readonly IReadOnlyList<string> All = [BottomUp, CenterOut, TextLine, TaglineFirst];
}

/// <summary>What keeps an order from being better.</summary>
public enum HeldBy
{
    Nothing,
    Layers,
    Colors,
}

/// <summary>An element that is sewn late, and the elements sewn before it that should come after it.</summary>
/// <param name="Worst">How wrong the worst of the pairs is, in shares of 20 A A: 0.5 is listed, 1 is far.</param>
public sealed record LateElement(int Element, IReadOnlyList<int> Behind, double Worst);

/// <summary>What one order rule says of one order.</summary>
/// <param name="Severity">Null: nothing.</param>
/// <param name="Share">The share that is judged.</param>
/// <param name="HeldBy">What keeps any order from being noticeably better.</param>
/// <param name="Late">Worst first; only for rules about pairs of elements.</param>
public sealed record OrderRuleResult(string Rule, Severity? Severity, double Share, HeldBy HeldBy, IReadOnlyList<LateElement> Late)
{
    /// <summary>Text lines sewn inward, worst first; only of the rule about them.</summary>
    public IReadOnlyList<InwardLine> Lines { get; init; } = [];
}

/// <summary>A text line that is sewn toward the middle.</summary>
/// <param name="Line">Its index among the text lines, then among the rows of letters without one, each from the lowest up.</param>
/// <param name="Share">Share of its pairs of letters that run inward.</param>
/// <param name="Elements">Indices of its elements, ascending.</param>
public sealed record InwardLine(int Line, double Share, IReadOnlyList<int> Elements);

/// <summary>Judges an order by the four order rules.</summary>
internal static class OrderRules
{
    // House: what order could still gain must be worth talking of.
    private const double Noticeable = 0.02;

    // House: a listed pair is wrong by half of what its rule can make of it, 20 A A for height and 10 A A for the way
    // from the seam, and both are at least 10 mm2 large.
    private const int ListedFromOfHeight = 10;
    private const int ListedFromOfSeam = 5;
    private const int ListedCells = 160;

    internal static IReadOnlyList<OrderRuleResult> Judge(PlanningTable table, IReadOnlyList<int> order, IndexFloor floor)
    {
        var shares = OrderShares.Of(table.Costs, order);
        var heldBy = HeldByOf(shares.OrderIndex, floor);
        return
        [
            Judged(OrderRuleIds.BottomUp, shares.OfHeight, heldBy, Late(table, order, ofHeight: true)),
            Judged(OrderRuleIds.CenterOut, shares.OfSeam, heldBy, Late(table, order, ofHeight: false)),
            TextLines(table, shares),
            Judged(OrderRuleIds.TaglineFirst, shares.TaglineLate, HeldBy.Nothing, LateTagline(table, order)),
        ];

        OrderRuleResult Judged(string rule, double share, HeldBy held, IReadOnlyList<LateElement> late) =>
            new(rule, AtMost(table.Request.Limits.Judge(rule, share), late.Count > 0), share, held, late);
    }

    /// <summary>Where no element is clearly late, a share is made of trifles and nobody is warned.</summary>
    private static Severity? AtMost(Severity? severity, bool isClear) =>
        severity == Severity.Warn && !isClear ? Severity.Note : severity;

    private static OrderRuleResult TextLines(PlanningTable table, OrderShares shares)
    {
        InwardLine[] lines =
        [
            .. table.Subject.Lines.Judged.Select(line => new InwardLine(line, shares.LineIndex[line], [.. table.Subject.Lines.Lines[line].Select(place => place.Element).Distinct().Order()]))
                .OrderByDescending(line => line.Share).ThenBy(line => line.Line),
        ];
        var worst = lines.Length == 0 ? 0 : lines[0].Share;
        return new(OrderRuleIds.TextLine, table.Request.Limits.Judge(OrderRuleIds.TextLine, worst), worst, HeldBy.Nothing, [])
        {
            Lines = [.. lines.Where(line => table.Request.Limits.Judge(OrderRuleIds.TextLine, line.Share) is not null)],
        };
    }

    /// <summary>A warn of the first is gone in the second, and the second warns of nothing new.</summary>
    internal static bool LosesWarn(IReadOnlyList<OrderRuleResult> received, IReadOnlyList<OrderRuleResult> proposed)
    {
        var pairs = received.Zip(proposed).Select(pair => (Was: Warns(pair.First), Is: Warns(pair.Second))).ToArray();
        return pairs.Any(pair => pair is { Was: true, Is: false }) && !pairs.Any(pair => pair is { Was: false, Is: true });
    }

    private static bool Warns(OrderRuleResult result) => result.Severity == Severity.Warn;

    private static HeldBy HeldByOf(double index, IndexFloor floor) =>
        index < Noticeable || index - floor.ColorsHeld >= Noticeable ? HeldBy.Nothing
        : index - floor.LayersOnly < Noticeable ? HeldBy.Layers
        : HeldBy.Colors;

    private static LateElement[] Late(PlanningTable table, IReadOnlyList<int> order, bool ofHeight)
    {
        var rows = new List<LateElement>();
        for (var at = 1; at < order.Count; at++)
        {
            var late = order[at];
            int[] behind = [.. order.Take(at).Where(first => IsListed(table, first, late, ofHeight))];
            if (behind.Length > 0)
                rows.Add(new(late, behind, Math.Round(behind.Max(first => Score(table.Costs, first, late)), 4, MidpointRounding.AwayFromZero)));
        }

        return [.. rows.OrderByDescending(row => row.Worst).ThenBy(row => row.Element)];
    }

    private static bool IsListed(PlanningTable table, int first, int second, bool ofHeight)
    {
        var wrong = table.Costs.Wrong(first, second);
        return wrong > 0
            && wrong >= (ofHeight ? ListedFromOfHeight : ListedFromOfSeam) * table.Costs.MassOf(first, second)
            && table.Subject.Masses[first].Total >= ListedCells && table.Subject.Masses[second].Total >= ListedCells
            && table.Costs.IsOfHeight(first, second) == ofHeight;
    }

    private static double Score(OrderCosts costs, int first, int second) =>
        (double)costs.Wrong(first, second) / (20.0 * costs.MassOf(first, second));

    private static LateElement[] LateTagline(PlanningTable table, IReadOnlyList<int> order)
    {
        var place = OrderShares.Places(order);
        return
        [
            .. from late in table.Subject.Lines.Tagline
               let behind = order.Take(place[late]).Where(first => table.Costs.DelaysTagline(first, late)).ToArray()
               where behind.Length > 0
               orderby place[late]
               select new LateElement(late, behind, 1),
        ];
    }
}
