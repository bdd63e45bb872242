using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Proofs;

/// <summary>Where a small picture and its words stand.</summary>
/// <param name="Window">The frame of the picture.</param>
/// <param name="IsBeside">Every figure has a line of its own.</param>
internal sealed record PictureRooms(SheetBox Window, SheetBox Title, SheetBox Figures, bool IsBeside)
{
    private const int Gap = 200;

    /// <summary>What the design may fill.</summary>
    public SheetBox Picture => Window.Inset(SmallView.Edge);

    /// <summary>The title above, the figures below.</summary>
    public static PictureRooms Stacked(SheetBox box, int title, int figures) => new(
        box.Below(title).TopPart(box.Height - title - figures),
        box.TopPart(title),
        box.Below(box.Height - figures).Below(50),
        IsBeside: false);

    /// <summary>Both to the right.</summary>
    public static PictureRooms Beside(SheetBox box, int width, int title)
    {
        var words = box.RightOf(box.Width - width);
        return new(box.LeftPart(box.Width - width - Gap), words.TopPart(title), words.Below(title), IsBeside: true);
    }

    public PictureRooms MovedRight(int by) => new(Moved(Window, by), Moved(Title, by), Moved(Figures, by), IsBeside);

    /// <summary>How the figures are set there.</summary>
    public IReadOnlyList<string> Lines(IReadOnlyList<string> figures) => IsBeside ? figures : [Line(figures)];

    public static string Line(IReadOnlyList<string> figures) => string.Join(", ", figures);

    private static SheetBox Moved(SheetBox box, int by) => box with { X = box.X + by };
}
