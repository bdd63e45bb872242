using System.Globalization;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning.Colors;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Rows;

/// <summary>
/// The table of what trims and color changes buy: the received order, the best one with no more trims, every number of
/// trims that lowers the order cost by at least two points, the same with other color blocks, and the steps in which a
/// text line can be cut apart.
/// </summary>
internal sealed class TradeOffs
{
    private const int MostRows = 10;

    private readonly IReadOnlyList<Coloring> _colorings;
    private readonly Choice _choice;

    private TradeOffs(IReadOnlyList<Coloring> colorings, Choice choice) => (_colorings, _choice) = (colorings, choice);

    /// <param name="colorings">The blocks of the tape first.</param>
    /// <param name="choice">What was chosen from them.</param>
    internal static IReadOnlyList<TradeOff> Of(IReadOnlyList<Coloring> colorings, Choice choice) => new TradeOffs(colorings, choice).Rows();

    private Coloring Held => _colorings[0];

    private bool IsKept => _choice.KeptBecause.Length > 0;

    private IReadOnlyList<TradeOff> Rows()
    {
        var (received, still) = (Received(), LeastDrift().ToArray());
        TradeOff[] lines = [.. _choice.Lines.Select(LineRow)];
        TradeOff[] colors = [.. _colorings.Skip(1).SelectMany(OtherColors)];
        TradeOff[] held = [.. HeldRows(MostRows - 1 - still.Length - lines.Length - colors.Length)];
        return [received, .. held, .. colors, .. lines, .. still];
    }

    private TradeOff Received() =>
        Row(Held, Held.Table.Received, _choice.Received.Trims, CertificateClaim.Found, IsKept, IsKept ? "" : "A better order was found.");

    private IEnumerable<TradeOff> LeastDrift() => _choice.LeastDrift is { } still
        ? [Row(Held, still, _choice.Received.Trims, CertificateClaim.Found, false, "It moves the cloth least, but departs from the order rules.")]
        : [];

    private IEnumerable<TradeOff> HeldRows(int most)
    {
        var listed = Listed(Held.Search.Points);
        while (listed.Count > most && listed.FindLastIndex(point => !IsBest(Held, point)) is >= 0 and var last)
            listed.RemoveAt(last);
        var claim = Held.Search.IsExact ? CertificateClaim.Proven : CertificateClaim.Bounded;
        return listed.Select(point => PointRow(Held, point, claim, WhyNot(point)));
    }

    private IEnumerable<TradeOff> OtherColors(Coloring coloring)
    {
        var best = coloring.Wanted;
        var withoutMore = coloring.Search.Points.Where(point => point.Trims <= _choice.Received.Trims).TakeLast(1)
            .Where(point => Math.Abs(point.Cost - best.Cost) >= ColorSearch.WorthSaying);
        return withoutMore.Append(best)
            .Where(point => IsBest(coloring, point) || IsWorthSaying(coloring, point))
            .OrderBy(point => point.Trims)
            .Select(point => PointRow(coloring, point, CertificateClaim.Found, WhyNot(coloring, point)));
    }

    /// <summary>More colors must lower the order cost noticeably; other blocks with no more changes are better in any case.</summary>
    private bool IsWorthSaying(Coloring coloring, CurvePoint point) => coloring.ExtraColorChanges <= Held.ExtraColorChanges
        ? point == coloring.Wanted
        : _colorings.TakeWhile(earlier => earlier != coloring).All(earlier => earlier.Search.Points
            .All(other => other.Trims > point.Trims || other.Cost - point.Cost >= ColorSearch.WorthSaying));

    private List<CurvePoint> Listed(IReadOnlyList<CurvePoint> points)
    {
        var (received, listed) = (_choice.Received, new List<CurvePoint>());
        foreach (var point in points.Where(point => point.Trims < received.Trims || point.Cost < received.Cost))
        {
            if (IsBest(Held, point) || IsBestWithoutMore(points, point, received)
                || (point.Trims > received.Trims && (listed.Count == 0 || listed[^1].Cost - point.Cost >= ColorSearch.WorthSaying)))
                listed.Add(point);
        }

        return listed;
    }

    private static bool IsBestWithoutMore(IReadOnlyList<CurvePoint> points, CurvePoint point, CurvePoint received) =>
        point.Trims <= received.Trims && points.All(other => other.Trims > received.Trims || other.Cost >= point.Cost);

    private bool IsBest(Coloring coloring, CurvePoint point) =>
        _choice.Best is { } best && best.Coloring == coloring && best.Point == point;

    private string WhyNot(CurvePoint point) =>
        IsBest(Held, point) ? _choice.KeptBecause
        : point.Trims > Held.MostTrims ? "More trims than this order allows."
        : _choice.Best is not { } better ? "The trims cost more than they gain."
        : better.Coloring.ExtraColorChanges > Held.ExtraColorChanges ? "Fewer color changes, but a worse order."
        : point.Trims <= better.Point.Trims ? "Fewer trims, but a worse order."
        : "The trims cost more than they gain.";

    private string WhyNot(Coloring coloring, CurvePoint point)
    {
        var allowed = Held.Table.Request.Budget.AllowExtraColorChanges;
        return IsBest(coloring, point) ? _choice.KeptBecause
            : !coloring.IsAllowed && allowed > 0 ? "More color changes than this order allows."
            : !coloring.IsAllowed ? (coloring.ExtraColorChanges == 1 ? "Another color change is not allowed on this order." : "More color changes are not allowed on this order.")
            : coloring.Best is null && Held.Table.Request.Budget.ExtraMinutes is not null ? "It takes longer than this order allows."
            : point.Trims > coloring.MostTrims ? "More trims than this order allows."
            : coloring.ExtraColorChanges < _choice.Best?.Coloring.ExtraColorChanges ? "Fewer color changes, but a worse order."
            : coloring == _choice.Best?.Coloring && point.Trims < _choice.Best.Point.Trims ? "Fewer trims, but a worse order."
            : coloring.ExtraColorChanges > Held.ExtraColorChanges ? "The color change costs more than it gains."
            : "A better order was found.";
    }

    private TradeOff PointRow(Coloring coloring, CurvePoint point, CertificateClaim claim, string whyNot) =>
        Row(coloring, coloring.Search.OrderWith(point.Trims), point.Trims, claim, IsBest(coloring, point) && !IsKept, whyNot);

    private TradeOff LineRow(LineStep step)
    {
        var (coloring, point) = _choice.Best ?? new(Held, _choice.Received);
        var row = Row(coloring, _choice.Order, point.Trims + step.Trims, CertificateClaim.Found, false, "");
        var others = OrderShares.Of(coloring.Table.Costs, _choice.Order).LineIndex.Where((_, line) => line != step.Line);
        var minutes = step.Trims * coloring.Table.Request.Budget.TrimSeconds * coloring.Table.Request.Budget.Loads / 60;
        return row with
        {
            LineIndexMax = others.Append(step.LineIndex).Max(),
            WhyNot = string.Create(CultureInfo.InvariantCulture, $"{step.Says}: {minutes:0.#} minutes on this order."),
        };
    }

    private static TradeOff Row(Coloring coloring, IReadOnlyList<int> order, int trims, CertificateClaim claim, bool chosen, string whyNot)
    {
        var (table, budget) = (coloring.Table, coloring.Table.Request.Budget);
        var shares = OrderShares.Of(table.Costs, order);
        var extra = trims - budget.ReceivedTrims;
        var seconds = Math.Round((extra * budget.TrimSeconds) + (coloring.ExtraColorChanges * budget.ColorChangeSeconds), 1, MidpointRounding.AwayFromZero);
        return new(
            coloring.ExtraColorChanges,
            extra,
            shares.OrderIndex,
            shares.LineIndexMax,
            shares.TaglineLate,
            seconds,
            Math.Round(seconds * budget.Loads / 60, 1, MidpointRounding.AwayFromZero),
            claim,
            chosen,
            whyNot)
        {
            DriftRatio = table.Request.Shift?.RatioOf(order),
        };
    }
}
