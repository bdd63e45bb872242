using System.Globalization;
using CapPrep.Drawing.Caps;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Cards;

/// <summary>
/// What the framing bench needs: cap, frame, backing, softening, the design at true size with its height above the
/// brim, and what not to frame at all.
/// </summary>
internal sealed class FramingHalf(SheetPad pad, JobFacts facts, Preparation preparation, SheetWords words)
{
    private const int FactsHead = 960;
    private const int MostFactLines = 3;
    private const int FootHeight = 950;
    private const int SideWidth = 3900;

    private static readonly Lettering Caption = Lettering.Strong(10).In(Ink.Soot);
    private static readonly Lettering Body = Lettering.Plain(10);

    private readonly CapStyle _style = preparation.Setup.Style!;
    private readonly BoxMm _design = preparation.Seating!.Box.ToMillimeters();

    public void Lay(SheetBox box)
    {
        var head = FactsHeight(box.Width);
        Facts(box.TopPart(head));
        var middle = box.Below(head) with { Height = box.Height - head - FootHeight };
        Side(middle.LeftPart(SideWidth));
        Picture(middle.RightOf(SideWidth));
        Foot(box.Below(box.Height - FootHeight));
    }

    private void Facts(SheetBox box)
    {
        var x = box.X;
        foreach (var (share, caption, strong, lines) in Columns())
        {
            var room = new SheetBox(x, box.Y, ColumnWidth(box.Width, share), box.Height);
            pad.Text(caption, room.TopPart(460), Caption);
            pad.Text(strong, room.Below(450).TopPart(520), Lettering.Strong(12).DownTo(10));
            pad.Paragraph(lines, room.Below(FactsHead), Body);
            x += box.Width * share / 100;
        }
    }

    private int FactsHeight(int width) => FactsHead + 100 + (Body.LineHeight * Columns()
        .Max(column => TextFit.Wrap(column.Lines, Body.Font, Body.Size, ColumnWidth(width, column.Share), MostFactLines).Count));

    private static int ColumnWidth(int width, int share) => (width * share / 100) - 250;

    private IEnumerable<(int Share, string Caption, string Strong, string Lines)> Columns() =>
    [
        (30, words["card.cap"], words.Say("card.caps", ("count", Text(preparation.Ticket.Received.Quantity))), CapLines()),
        (22, words["card.frame"], preparation.Setup.Frame.Name, FrameLines()),
        (26, words["card.backing"], BackingPieces(), _style.Sewing.Backing),
        (22, words["card.soften"], words[_style.Sewing.Soften ? "card.softenYes" : "card.softenNo"], _style.Sewing.Softening ?? ""),
    ];

    private string CapLines()
    {
        var ticket = preparation.Ticket.Received;
        return JobWords.Joined(
            _style.Name,
            ticket.CapSku is { } sku ? words.Say("card.sku", ("sku", sku)) : null,
            ticket.CapColor?.Name,
            _style.SizeRange,
            ticket.Blanks is { } blanks ? words.Say("card.blanks", ("count", Text(blanks))) : null);
    }

    private string FrameLines()
    {
        var frame = preparation.Setup.Frame;
        return JobWords.Joined(
            frame.Gauge is { } gauge ? words.Say("card.gauge", ("gauge", gauge)) : null,
            frame.Numbers.Count > 0 ? words.Say("card.frameNumbers", ("numbers", string.Join(' ', frame.Numbers))) : null);
    }

    private string BackingPieces() => _style.Sewing is { BackingWidthMm: { } width, BackingHeightMm: { } height } sewing
        ? words.Say("card.backingPieces", ("pieces", Text(sewing.BackingPieces)), ("width", Text(width)), ("height", Lengths.Mm(height)))
        : words.Say("card.backingCount", ("pieces", Text(_style.Sewing.BackingPieces)));

    private void Side(SheetBox box)
    {
        var big = Lettering.Strong(18);
        pad.Text(Lengths.Mm(_design.Bottom), box.TopPart(850), big);
        var y = 850;
        if (facts.Units == LengthUnits.MmInch)
        {
            pad.Text($"({Lengths.Inches(_design.Bottom)})", box.Below(y).TopPart(800), big);
            y += 800;
        }

        var tolerance = preparation.Setup.Station.Tolerance;
        y += pad.Paragraph(words["card.aboveBrim"], box.Below(y).LeftPart(SideWidth - 200), Lettering.Strong(10)) + 100;
        y += pad.Paragraph(
            words.Say("card.tolerance", ("aim", Lengths.Of(tolerance.AimMm, facts.Units)), ("accept", Lengths.Of(tolerance.AcceptMm, facts.Units))),
            box.Below(y).LeftPart(SideWidth - 200),
            Body) + 100;
        y += pad.Paragraph(
            words.Say("card.center", ("how", _style.Framing.CenterFoundBy)), box.Below(y).LeftPart(SideWidth - 200), Body) + 200;
        OnGauge(box.Below(y).LeftPart(SideWidth - 200));
    }

    private void OnGauge(SheetBox box)
    {
        if (box.Height < 2200)
            return;
        var used = pad.Paragraph(words["card.onGauge"], box, Body);
        var window = box.Below(used + 100) with { Height = Math.Min(3000, box.Height - used - 100) };
        var picture = new CapPicture(pad, preparation);
        var view = CapView.Fit(window, picture.Needed(60, 8), turned: true);
        pad.Group(words["group.turned"], window, () => picture.Draw(view, colored: false));
    }

    private void Picture(SheetBox window)
    {
        var picture = new CapPicture(pad, preparation);
        var view = CapView.Fit(window, Shown(window));
        pad.Group(words["group.cap"], window, () =>
        {
            picture.Draw(view, colored: false);
            new Dimensions(pad, view, facts.Units, Lettering.Strong(10)).AboveBrim(_design);
        });
        if (view.Reduction > 1)
            NotTrueSize(window.TopPart(500), view.Reduction);
    }

    private void NotTrueSize(SheetBox box, int reduction)
    {
        var says = words.Say("card.notTrueSize", ("n", Text(reduction)));
        var set = Lettering.Strong(12);
        pad.Box(box.LeftPart(TextFit.Width(says, set.Font, set.Size) + 200), null, Ink.White);
        pad.Text(says, box, set);
    }

    /// <summary>The design and a strip of the brim below it; less of the brim where the design is tall.</summary>
    private BoxMm Shown(SheetBox window)
    {
        var brim = Math.Clamp((window.Height / 100.0) - _design.Top - 2.1, 3, 10);
        return new BoxMm(_design.Left - 2, Math.Min(-brim, _design.Bottom - 2), _design.Right + 2, _design.Top + 2);
    }

    private void Foot(SheetBox box)
    {
        ScaleRule.Draw(pad, new SheetPoint(box.X, box.Y + 420), words["rule"], Body);
        pad.Paragraph(words["card.reject"], box.RightOf(6800), Body);
    }

    private static string Text(double number) => number.ToString("0.#", CultureInfo.InvariantCulture);
}
