using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;

namespace CapPrep.Drawing.Proofs;

/// <summary>The received and the proposed sew order side by side, with their figures and the biggest moves.</summary>
internal sealed class OrderPair(SheetPad pad, SheetWords words, Preparation preparation)
{
    /// <summary>Under this height the pictures say nothing.</summary>
    public const int Least = 5000;

    private const int Caption = 600;
    private const int Row = 450;
    private const int Gap = 300;

    private static readonly Lettering Body = Lettering.Plain(9).DownTo(7);

    private readonly OrderWords _says = new(words, preparation);
    private readonly OrderPicture _picture = new(pad, preparation);

    private int FootHeight => Row * (_says.WhyNot is null ? 1 : 2);

    /// <summary>Null where no other order is proposed.</summary>
    public static OrderPair? Of(SheetPad pad, SheetWords words, Preparation preparation) =>
        preparation.Order is { IsChanged: true } ? new OrderPair(pad, words, preparation) : null;

    public void Lay(SheetBox box) => pad.Group(words["group.orders"], null, () =>
    {
        Heading(box.TopPart(Caption));
        var pictures = box.Below(Caption).TopPart(box.Height - Caption - FootHeight);
        var half = (pictures.Width - Gap) / 2;
        One(pictures.LeftPart(half), _says.Received, _says.ReceivedFigures, _picture.Received);
        One(pictures.RightOf(half + Gap), _says.Proposed, _says.ProposedFigures, _picture.Proposed);
        Foot(box.Below(box.Height - FootHeight));
    });

    private void Heading(SheetBox box)
    {
        var set = Lettering.Strong(11);
        var says = words["orders.heading"];
        pad.Text(says, box, set);
        pad.Text(words["orders.reading"], box.RightOf(TextFit.Width(says, set.Font, set.Size) + Gap), Body.In(Ink.Soot));
    }

    private void One(SheetBox box, string title, string figures, Action<SheetBox> draw)
    {
        pad.Text(title, box.TopPart(Row), Lettering.Strong(9).DownTo(7));
        var window = box.Below(Row).TopPart(box.Height - (2 * Row));
        pad.Box(window, new Stroke(15, Ink.Mist), Ink.White);
        pad.Group(title, window, () => draw(window.Inset(200)));
        pad.Text(figures, box.Below(box.Height - Row), Body);
    }

    private void Foot(SheetBox box)
    {
        if (_says.WhyNot is { } why)
            pad.Text(why, box.TopPart(Row), Body);
        var moves = _says.Moves(line => TextFit.Width(line, Body.Font, Body.Size) <= box.Width);
        pad.Text(moves, box.Below(box.Height - Row), Body);
    }
}
