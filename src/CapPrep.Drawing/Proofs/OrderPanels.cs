using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Drawing.Proofs;

/// <summary>
/// The received and the proposed sew order side by side: what is sewn first is light, what is sewn last is dark, and
/// numbers are places in the order.
/// </summary>
internal sealed class OrderPanels(SheetPad pad, SheetWords words, Preparation preparation)
{
    /// <summary>Height of everything, 0.01 mm.</summary>
    public const int Height = 5600;

    private const int Caption = 600;
    private const int PanelGap = 300;
    private const int PictureHeight = 3000;
    private const int MostMoves = 2;
    private const int FigureLines = 2;

    private static readonly Lettering Title = Lettering.Strong(9);
    private static readonly Lettering Body = Lettering.Plain(8);

    /// <summary>There are two orders to show.</summary>
    public static bool AreOwed(Preparation preparation) => preparation.Order is { IsChanged: true };

    public void Lay(SheetBox box)
    {
        var order = preparation.Order!;
        pad.Text(words["proof.orders"], box.TopPart(Caption), Lettering.Strong(11));
        var panels = box.Below(Caption).TopPart(Title.LineHeight + PictureHeight + (FigureLines * Body.LineHeight));
        var width = (box.Width - PanelGap) / 2;
        int[] received = [.. Enumerable.Range(0, order.Order.Count)];
        Panel(panels.LeftPart(width), words["proof.orderReceived"], received, Figures(order.Received));
        Panel(panels.RightOf(width + PanelGap), words[IsUsed ? "proof.orderNew" : "proof.orderKept"], order.Order, Figures(order.Proposed));
        pad.Paragraph(IsUsed ? JobWords.Joined(Moves(), Extra()) : order.KeptBecause, box.Below(Caption + panels.Height + 60), Body);
    }

    private bool IsUsed => preparation.Order!.Used == UsedOrder.Proposed;

    private void Panel(SheetBox box, string title, IReadOnlyList<int> order, string figures)
    {
        pad.Text(title, box.TopPart(Title.LineHeight), Title.DownTo(7));
        var picture = box.Below(Title.LineHeight).TopPart(PictureHeight);
        pad.Box(picture, new Stroke(10, Ink.Mist));
        new OrderPicture(pad, preparation, picture).Draw(order);
        pad.Paragraph(figures, box.Below(Title.LineHeight + PictureHeight + 30).TopPart(FigureLines * Body.LineHeight), Body);
    }

    private string Figures(OrderFigures figures) => words.Say(
        "proof.orderFigures",
        ("wrong", Text(Math.Round(100 * figures.Shares.OrderIndex, MidpointRounding.AwayFromZero))),
        ("trims", Text(figures.Trims)),
        ("stops", Text(figures.ColorChanges)));

    /// <summary>Of every reason the move that goes farthest, by place in the received and in the proposed order.</summary>
    private string Moves() => string.Join("; ", preparation.Order!.Moves
        .OrderByDescending(move => Math.Abs(move.From - move.To))
        .DistinctBy(move => move.Because)
        .Take(MostMoves)
        .Select(move => words.Say("proof.orderMove", ("from", Text(move.From + 1)), ("to", Text(move.To + 1)), ("because", move.Because))));

    private string? Extra() => preparation.Order!.TradeOffs.FirstOrDefault(row => row is { Chosen: true, ExtraMinutes: not 0 }) is { } row
        ? words.Say("proof.orderMinutes", ("minutes", row.ExtraMinutes.ToString("+0.0;-0.0", CultureInfo.InvariantCulture)))
        : null;

    private static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);
}
