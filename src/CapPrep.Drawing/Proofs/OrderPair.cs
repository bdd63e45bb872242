using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;

namespace CapPrep.Drawing.Proofs;

/// <summary>The received and the proposed sew order side by side, with their figures and the biggest moves.</summary>
internal sealed class OrderPair(SheetPad pad, SheetWords words, Preparation preparation)
{
    /// <summary>Below the cap, under this height the pictures say nothing.</summary>
    public const int Least = 4600;

    /// <summary>The same in the margin, where the words take more lines.</summary>
    public const int LeastInMargin = 5600;

    private const int Caption = 600;
    private const int Gap = 300;
    private const int MostLines = 4;

    /// <summary>Here the moves take two lines.</summary>
    private const int NarrowBelow = 12000;

    /// <summary>Of the words where they stand beside a picture.</summary>
    private const int WordsWidth = 3400;

    private static readonly Lettering Title = Lettering.Strong(9);
    private static readonly Lettering Body = Lettering.Plain(9).DownTo(7);

    private readonly OrderWords _says = new(words, preparation);
    private readonly OrderPicture _picture = new(pad, preparation);

    /// <summary>Null where no other order is proposed.</summary>
    public static OrderPair? Of(SheetPad pad, SheetWords words, Preparation preparation) =>
        preparation.Order is { IsChanged: true } ? new OrderPair(pad, words, preparation) : null;

    public void Lay(SheetBox box) => pad.Group(words["group.orders"], null, () =>
    {
        Heading(box.TopPart(Caption));
        var foot = Foot(box.Width);
        var footHeight = foot.Sum(line => LineCount(line, box.Width)) * Body.LineHeight;
        var pictures = box.Below(Caption).TopPart(box.Height - Caption - footHeight - 100);
        var half = (pictures.Width - Gap) / 2;
        var rooms = Rooms(pictures.LeftPart(half));
        One(rooms, _says.Received, _says.ReceivedFigures, _picture.Received);
        One(rooms.MovedRight(half + Gap), _says.Proposed, _says.ProposedFigures, _picture.Proposed);
        Paragraphs(foot, box.Below(box.Height - footHeight));
    });

    private void Heading(SheetBox box)
    {
        var set = Lettering.Strong(11);
        var says = words["orders.heading"];
        pad.Text(says, box, set);
        var rest = box.RightOf(TextFit.Width(says, set.Font, set.Size) + Gap);
        var suffix = _picture.HasArrows ? "Arrows" : "";
        var whole = words["orders.reading" + suffix];
        var fits = TextFit.Width(whole, Body.Font, Body.Floor) <= rest.Width;
        pad.Text(fits ? whole : words["orders.readingShort" + suffix], rest, Body.In(Ink.Soot));
    }

    private void One(PictureRooms rooms, string title, IReadOnlyList<string> figures, Action<SheetBox> draw)
    {
        pad.Box(rooms.Window, new Stroke(15, Ink.Mist), Ink.White);
        pad.Group(title, rooms.Window, () => draw(rooms.Picture));
        pad.Paragraph(title, rooms.Title, Title);
        Paragraphs(rooms.Lines(figures), rooms.Figures);
    }

    /// <summary>Words above and below the picture or beside it, whichever shows the design larger.</summary>
    private PictureRooms Rooms(SheetBox box)
    {
        var title = Lines(box.Width, Title, _says.Received, _says.Proposed);
        var figures = Lines(box.Width, Body, PictureRooms.Line(_says.ReceivedFigures), PictureRooms.Line(_says.ProposedFigures));
        var stacked = PictureRooms.Stacked(box, title + 50, figures + 50);
        if (box.Width < 2 * WordsWidth)
            return stacked;
        var beside = PictureRooms.Beside(box, WordsWidth, Lines(WordsWidth, Title, _says.Received, _says.Proposed) + 50);
        return Percent(beside) > Percent(stacked) ? beside : stacked;
    }

    private int Percent(PictureRooms rooms) => SmallView.Fit(rooms.Picture, preparation).Percent;

    private static int Lines(int width, Lettering set, params string[] texts) =>
        texts.Max(text => TextFit.Wrap(text, set.Font, set.Size, width, MostLines).Count) * set.LineHeight;

    private IReadOnlyList<string> Foot(int width)
    {
        var most = width < NarrowBelow ? 2 : 1;
        var moves = _says.Moves(line => LineCount(line, width) <= most);
        return _says.WhyNot is { } why ? [why, moves] : [moves];
    }

    private void Paragraphs(IReadOnlyList<string> texts, SheetBox box)
    {
        foreach (var text in texts)
            box = box.Below(pad.Paragraph(text, box, Body));
    }

    private static int LineCount(string text, int width) => TextFit.Wrap(text, Body.Font, Body.Size, width, MostLines).Count;
}
