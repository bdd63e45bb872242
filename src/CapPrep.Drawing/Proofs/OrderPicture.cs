using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;

namespace CapPrep.Drawing.Proofs;

/// <summary>
/// The design in two orders of sewing: every element in a gray by its place, light first and dark last, with the place
/// numbers of the elements that change theirs.
/// </summary>
internal sealed class OrderPicture
{
    /// <summary>Points that matter less than this are left out, 0.01 mm.</summary>
    private const int Tolerance = 15;

    /// <summary>Thread of 40 wt covers about 0.4 mm (common practice, no source), 0.01 mm.</summary>
    private const int ThreadWidth = 40;
    private const int ThinnestLine = 10;
    private const int Lightest = 208;
    private const int Darkest = 24;

    /// <summary>Up to so many elements all carry their number.</summary>
    private const int AllNumbered = 12;

    private readonly SheetPad _pad;
    private readonly Preparation _preparation;
    private readonly StitchSequence _stitches;
    private readonly IReadOnlyList<int> _received;
    private readonly IReadOnlyList<int> _proposed;

    /// <param name="pad">Drawn on.</param>
    /// <param name="preparation">Has a proposed order.</param>
    public OrderPicture(SheetPad pad, Preparation preparation)
    {
        (_pad, _preparation) = (pad, preparation);
        _stitches = StitchSequence.Of(preparation.Tape, preparation.Setup.Machine.Tape.TrimCount);
        _proposed = preparation.Order!.Order;
        _received = [.. Enumerable.Range(0, _proposed.Count)];
    }

    public void Received(SheetBox window) => Draw(window, _received, drift => drift.Received);

    public void Proposed(SheetBox window) => Draw(window, _proposed, drift => drift.Proposed);

    /// <summary>The pictures have arrows that say where the cloth goes.</summary>
    public bool HasArrows => Drifts.Any(drift => DriftArrows.Any([drift.Received, drift.Proposed]));

    private IReadOnlyList<ElementDrift> Drifts => _preparation.Shift?.Drifts ?? [];

    private IReadOnlyList<Element> Elements => _preparation.Reading.Elements;

    private void Draw(SheetBox window, IReadOnlyList<int> order, Func<ElementDrift, ClothShift> drift)
    {
        var view = SmallView.Fit(window, _preparation);
        var width = Math.Max(ThinnestLine, view.Length(ThreadWidth));
        foreach (var (element, place) in order.Select((index, place) => (Elements[index], place)))
            _pad.Add(new LinesMark([Line(view, element)], new Stroke(width, Shade(place, order.Count))));
        if (Drifts.Count > 0)
            DriftArrows.Draw(_pad, view, Elements, [.. Drifts.Select(drift)]);
        var places = PlacesIn(order);
        foreach (var (element, plate) in Numbered(view))
            OrderNumbers.Draw(_pad, plate, places[element.Index] + 1);
    }

    /// <summary>The same plates in both pictures, so that the eye finds an element again.</summary>
    private IReadOnlyList<(Element Element, SheetBox Plate)> Numbered(SmallView view)
    {
        var moved = _preparation.Order!.Moves.Select(move => move.Element).ToHashSet();
        var proposed = PlacesIn(_proposed);
        return new OrderNumbers(view, _stitches).Places(
            Elements.Where(element => Elements.Count <= AllNumbered || moved.Contains(element.Index)),
            element => Math.Max(element.Index, proposed[element.Index]) + 1);
    }

    private IReadOnlyList<SheetPoint> Line(SmallView view, Element element) => Thinning.Reduce(
        [.. Enumerable.Range(element.First, element.Penetrations).Select(point => view.At(_stitches.At(point)))], Tolerance);

    private static Ink Shade(int place, int count) =>
        Ink.Gray((byte)(Lightest - ((Lightest - Darkest) * place / Math.Max(1, count - 1))));

    private static int[] PlacesIn(IReadOnlyList<int> order)
    {
        var places = new int[order.Count];
        for (var place = 0; place < order.Count; place++)
            places[order[place]] = place;
        return places;
    }
}
