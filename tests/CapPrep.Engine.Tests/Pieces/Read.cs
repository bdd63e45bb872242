using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Tests.Pieces;

/// <summary>Short ways from a draft to its reading.</summary>
internal static class Read
{
    public static StitchSequence Stitches(Draft draft) => StitchSequence.Of(draft.ToTape("10427"), draft.TrimJumps);

    public static DesignReading Of(Draft draft, IReadOnlyList<int>? threadOfBlock = null) =>
        DesignReader.Read(Stitches(draft), threadOfBlock);

    /// <summary>What a reading says, as text: equal readings give equal text.</summary>
    public static IReadOnlyList<string> Lines(DesignReading reading) =>
    [
        .. reading.Elements.Select(element =>
            $"element {element.Index} {element.First}-{element.Last} {element.Block} {element.Thread} {element.Kind} {element.Box} {element.Cover.Area} {element.Axis}"),
        .. reading.Links.Select(link => link.ToString()),
        .. reading.MustFollow.Select(pair => pair.ToString()),
        .. reading.Pieces.Select(piece => piece.ToString()),
        .. reading.Spans.Select(span => span.ToString()),
        .. reading.Limits.Select(limit => limit.ToString()),
    ];

    public static Column Column(int x, int y, int width = 30, int height = 150) =>
        Drafting.Column.Upright(new(x, y), width, height);

    public static Fill Fill(int left, int bottom, int right, int top) => Drafting.Fill.Of(new(left, bottom, right, top));

    public static TapePoint At(int x, int y) => new(x, y);
}
