using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Revisions;

/// <summary>What differs between two tapes although no point asked for it: one thing mended, another one moved.</summary>
internal sealed class OutsideChanges
{
    /// <summary>Width and height differ when they differ by more, tape units (house).</summary>
    private const int SizeTolerance = 2;

    // With less than a tenth of its stitches left an element is gone (house).
    private const int GoneShare = 10;

    // Where more elements are gone it is another design.
    private const int MostLookedFor = 100;

    /// <summary>Rules whose remedies may add or take away a stop.</summary>
    private static readonly string[] AboutStops = ["order.", "border.late", "foam.", "applique.", "ticket.threads", "ticket.needles"];

    private readonly DesignPoints _earlier;
    private readonly DesignPoints _now;
    private readonly TapePoint _shift;
    private readonly IReadOnlyList<EarlierFinding> _asked;
    private readonly Func<Box, BoxMm?> _onCap;
    private readonly SegmentMatch _match;
    private readonly int[] _missing;
    private readonly int[] _unknown;
    private readonly Dictionary<int, int> _movedTo = [];

    private OutsideChanges(DesignPoints earlier, DesignPoints now, TapePoint shift, IReadOnlyList<EarlierFinding> asked, Func<Box, BoxMm?> onCap)
    {
        (_earlier, _now, _shift, _asked, _onCap) = (earlier, now, shift, asked, onCap);
        _match = SegmentMatch.Of(earlier, now, shift);
        _missing = [.. earlier.Reading.Elements.Select(_match.Missing)];
        _unknown = [.. now.Reading.Elements.Select(_match.Unknown)];
        foreach (var element in earlier.Reading.Elements.Where(IsMostlyMissing).Take(MostLookedFor))
        {
            if (PlaceNow(element) is { } moved)
                _movedTo[element.Index] = moved;
        }
    }

    /// <param name="shift">From a point of the earlier design to the same point of the new one.</param>
    /// <param name="asked">What the job before asked somebody to change.</param>
    /// <param name="onCap">Where a box of the new design lies on the cap.</param>
    internal static IReadOnlyList<OutsideChange> Of(
        DesignPoints earlier, DesignPoints now, TapePoint shift, IReadOnlyList<EarlierFinding> asked, Func<Box, BoxMm?> onCap) =>
        new OutsideChanges(earlier, now, shift, asked, onCap).All();

    private IReadOnlyList<OutsideChange> All()
    {
        var sizeDiffers = Math.Abs(_earlier.Box.Width - _now.Box.Width) > SizeTolerance || Math.Abs(_earlier.Box.Height - _now.Box.Height) > SizeTolerance;
        if (sizeDiffers && _asked.Any(IsAboutSize))
            return [.. Colors()];
        return [.. sizeDiffers ? [Size()] : Array.Empty<OutsideChange>(), .. Colors(), .. Elements(), .. Added()];
    }

    /// <summary>At another size every stitch is another.</summary>
    private static bool IsAboutSize(EarlierFinding finding) => Inspector.IsAboutSize(finding.Rule) || finding.Rule == "ticket.size";

    private OutsideChange Size() => new(
        OutsideKind.Size,
        $"The design is {Mm(_now.Box)} now, it was {Mm(_earlier.Box)}.",
        BoxMm: _onCap(_now.Box));

    private IEnumerable<OutsideChange> Colors()
    {
        if (_earlier.Stitches.Blocks != _now.Stitches.Blocks && !_asked.Any(finding => AboutStops.Any(rule => finding.Rule.StartsWith(rule, StringComparison.Ordinal))))
            yield return new(OutsideKind.Colors, $"There are {Figure.Count(_now.Stitches.Blocks, "color block")} now, there were {Figure.Plain(_earlier.Stitches.Blocks, 0)}.");
    }

    private IEnumerable<OutsideChange> Elements()
    {
        var blockNow = BlocksNow();
        foreach (var element in _earlier.Reading.Elements.Where(element => element.Penetrations > 1 && !IsNamed(element)))
        {
            if (_missing[element.Index] > 0)
                yield return Differing(element);
            else if (_earlier.Stitches.Blocks == _now.Stitches.Blocks && _match.BlockNow(element) is { } block && block != blockNow.GetValueOrDefault(element.Block, block))
                yield return Change(OutsideKind.Colors, element, $"{Name(element)} is sewn in color block {Figure.Plain(block, 0)} now.");
        }
    }

    /// <summary>Needle point of the new design at which an element begins that lies elsewhere now; the nearest one.</summary>
    private int? PlaceNow(Element element) => Enumerable.Range(0, _now.Count)
        .Where(start => _earlier.HasShapeAt(element, _now, start))
        .OrderBy(start => (_now.At(start) - _earlier.At(element.First) - _shift).Reach)
        .Select(start => (int?)start)
        .FirstOrDefault();

    /// <summary>The new block that sews most of each earlier one.</summary>
    private Dictionary<int, int> BlocksNow() => _earlier.Reading.Elements
        .Where(element => element.Penetrations > 1)
        .Select(element => (element.Block, element.Penetrations, Now: _match.BlockNow(element)))
        .Where(one => one.Now is not null)
        .GroupBy(one => one.Block)
        .ToDictionary(
            block => block.Key,
            block => block.GroupBy(one => one.Now).OrderByDescending(group => group.Sum(one => one.Penetrations)).ThenBy(group => group.Key).First().Key!.Value);

    private OutsideChange Differing(Element element)
    {
        var (missing, stitches) = (_missing[element.Index], element.Penetrations - 1);
        if (_movedTo.TryGetValue(element.Index, out var moved))
        {
            var by = _now.At(moved) - _earlier.At(element.First) - _shift;
            return Change(OutsideKind.Moved, element, $"{Name(element)} was moved by {Figure.Mm(Length(by))}.") with
            {
                BoxMm = _onCap(_now.BoxOf(moved, moved + element.Penetrations - 1)),
            };
        }

        if (GoneShare * (stitches - missing) > stitches)
            return Change(OutsideKind.Changed, element, $"{Name(element)}: {Figure.Plain(missing, 0)} of {Figure.Count(stitches, "stitch", "stitches")} differ.");
        return _now.Reading.Elements.Any(other => IsMostlyUnknown(other) && Meets(Shifted(element), _now.BoxOf(other)))
            ? Change(OutsideKind.Changed, element, $"{Name(element)} was made anew.")
            : Change(OutsideKind.Removed, element, $"{Name(element)} is gone.");
    }

    /// <summary>What is new lies where nothing was asked for and nothing was told already.</summary>
    private IEnumerable<OutsideChange> Added()
    {
        Box[] told = [.. _earlier.Reading.Elements.Where(element => IsNamed(element) || _missing[element.Index] > 0).Select(Shifted)];
        return _now.Reading.Elements
            .Where(element => IsMostlyUnknown(element) && !IsTold(element, told))
            .Select(element => new OutsideChange(
                OutsideKind.Added, $"{Name(element)} was not there before.", element.Index + 1, _onCap(_now.BoxOf(element)), new StitchRange(element.First + 1, element.Last + 1)));
    }

    private bool IsTold(Element element, Box[] told)
    {
        var box = _now.BoxOf(element);
        return told.Any(other => Meets(other, box))
            || _movedTo.Any(moved => moved.Value <= element.Last && moved.Value + _earlier.Reading.Elements[moved.Key].Penetrations > element.First);
    }

    /// <summary>A point about the size of the whole design names no element.</summary>
    private bool IsNamed(Element element) => _asked.Any(finding => finding.Asked is Actor.Digitizer or Actor.OrderDesk && !IsAboutSize(finding)
        && finding.Places.Any(place => place.Stitches is { } range && range.First - 1 <= element.Last && range.Last - 1 >= element.First));

    private bool IsMostlyMissing(Element earlier) => 2 * _missing[earlier.Index] > earlier.Penetrations - 1;

    private bool IsMostlyUnknown(Element now) => 2 * _unknown[now.Index] > now.Penetrations - 1;

    private Box Shifted(Element element) => _earlier.BoxOf(element).Shift(_shift.X, _shift.Y);

    private OutsideChange Change(OutsideKind what, Element element, string message) => new(
        what, message, element.Index + 1, _onCap(Shifted(element)), new StitchRange(element.First + 1, element.Last + 1));

    /// <summary>They share at least half of the smaller one.</summary>
    private static bool Meets(Box one, Box other)
    {
        long width = Math.Min(one.Right, other.Right) - Math.Max(one.Left, other.Left) + 1;
        long height = Math.Min(one.Top, other.Top) - Math.Max(one.Bottom, other.Bottom) + 1;
        return width > 0 && height > 0 && 2 * width * height >= Math.Min(Area(one), Area(other));
    }

    private static long Area(Box box) => (box.Width + 1L) * (box.Height + 1L);

    private static double Length(TapePoint by) => Math.Sqrt(((double)by.X * by.X) + ((double)by.Y * by.Y)) / Tenths.PerMillimeter;

    private static string Mm(Box box) => $"{Figure.Plain(box.Width / 10.0, 1)} x {Figure.Mm(box.Height / 10.0)}";

    private static string Name(Element element) => $"{Kind(element.Kind)} in color block {Figure.Plain(element.Block, 0)}";

    private static string Kind(ElementKind kind) => kind switch
    {
        ElementKind.Satin => "Satin",
        ElementKind.Fill => "Fill",
        ElementKind.Underlay => "Underlay",
        ElementKind.OpenZigzag => "Open zigzag",
        _ => "Running line",
    };
}
