using CapPrep.Engine.Sequence.Planning.Colors;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Rows;

/// <summary>The order that is proposed.</summary>
/// <param name="Coloring">Its color blocks.</param>
/// <param name="Point">Its trims and order cost.</param>
internal sealed record ChosenOrder(Coloring Coloring, CurvePoint Point)
{
    /// <summary>Of order, trims and color changes.</summary>
    internal long Price => Coloring.PriceOf(Point);
}

/// <summary>What the rows of the table are told from.</summary>
/// <param name="Best">The best order within what is allowed; null when the received one is no worse.</param>
/// <param name="Order">The order that is proposed; the received one where no other is.</param>
/// <param name="KeptBecause">Why the received order is used; empty when it is not.</param>
/// <param name="LeastDrift">The order in which the cloth moves least, where that matters.</param>
/// <param name="Lines">Ways to cut a text line apart.</param>
internal sealed record Choice(CurvePoint Received, ChosenOrder? Best, IReadOnlyList<int> Order, string KeptBecause, int[]? LeastDrift, IReadOnlyList<LineStep> Lines);
