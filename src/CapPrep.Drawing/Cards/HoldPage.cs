using CapPrep.Drawing.Caps;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Cards;

/// <summary>
/// The page in the card's place when nobody may sew: HOLD across its head, who must act, what has to happen, and the
/// picture. No needles, nothing to key in, no code.
/// </summary>
internal sealed class HoldPage(SheetPad pad, JobFacts facts, Preparation preparation, SheetWords words, JobWords job)
{
    private const int BandHeight = 2600;
    private const int Gap = 300;
    private const double HalfFront = 90;

    private static readonly Lettering Body = Lettering.Plain(11);

    public void Lay(SheetBox page)
    {
        pad.Group(words["group.head"], null, () => Head(page));
        var y = 6400;
        var text = page.Below(y);
        var used = 0;
        pad.Group(words["group.hold"], null, () => used = Demands(text.TopPart(9500)));
        Picture(text.Below(used + Gap));
    }

    private void Head(SheetBox page)
    {
        var band = page.TopPart(BandHeight);
        pad.Box(band, null, Ink.Black);
        pad.Text(words["band.hold"], band, Lettering.Strong(60).In(Ink.White), Align.Center);
        var below = page.Below(BandHeight + 150);
        var order = pad.Text(job.Order, below.TopPart(1150).LeftPart(12000), Lettering.Strong(28).DownTo(24));
        pad.Text(job.NumberAndRevision, below.TopPart(1150).RightOf(12300), Lettering.Strong(14).DownTo(10), Align.Right);
        pad.Text(JobWords.Joined(job.ParticularsBelow(order), CapWords()), below.Below(1150).TopPart(550), Lettering.Strong(11).DownTo(10));
        pad.Text(job.Received, below.Below(1680).TopPart(500), Lettering.Plain(10));
        pad.Text(Stop(), below.Below(2250).TopPart(900), Lettering.Strong(16).DownTo(11));
        pad.Line(new(page.X, below.Y + 3250), new(page.Right, below.Y + 3250), new Stroke(20, Ink.Black));
    }

    private string Stop() => words[preparation.Seating is null ? "hold.noStyle" : "hold.stop"];

    private string CapWords() => JobWords.Joined(
        preparation.Setup.Style?.Name ?? preparation.Ticket.Received.CapSku, preparation.Ticket.Received.CapColor?.Name);

    /// <returns>The height used.</returns>
    private int Demands(SheetBox box)
    {
        pad.Text(words["hold.who"], box.TopPart(600), Lettering.Strong(12));
        var who = preparation.Actors.Count == 0
            ? words["hold.none"]
            : string.Join(", ", preparation.Actors.Select(actor => words.Of(actor)));
        pad.Text(who, box.Below(600).TopPart(700), Lettering.Strong(16).DownTo(11));
        pad.Text(words["hold.what"], box.Below(1400).TopPart(600), Lettering.Strong(12));
        var y = 2050;
        foreach (var finding in Holds())
            y += Demand(finding, box.Below(y));
        if (preparation.Seating is null && preparation.Setup.StyleSuggestions.Count > 0)
            y += pad.Paragraph(
                words.Say("hold.suggestions", ("styles", string.Join(", ", preparation.Setup.StyleSuggestions))), box.Below(y), Body);
        return y;
    }

    private IEnumerable<Finding> Holds() => preparation.Findings
        .Where(finding => finding is { Severity: Severity.Hold, State: not FindingState.Solved })
        .Take(5);

    private int Demand(Finding finding, SheetBox box)
    {
        if (box.Height < 2 * Body.LineHeight)
            return 0;
        SeverityShape.Draw(pad, finding.Severity, new SheetPoint(box.X + 350, box.Y + 260), 280, null);
        var room = box.RightOf(1000);
        string?[] said = [words.Heading(finding) + ".", finding.Message, words.Remedy(finding)];
        return pad.Paragraph(string.Join(' ', said.OfType<string>()), room.TopPart(Math.Min(room.Height, 4 * Body.LineHeight)), Body) + 150;
    }

    private void Picture(SheetBox window)
    {
        var picture = new CapPicture(pad, preparation);
        var view = picture.View(window, HalfFront, 14);
        pad.Group(words[preparation.Seating is null ? "group.design" : "group.cap"], window, () =>
        {
            picture.Draw(view, colored: false);
            var dimensions = new Dimensions(pad, view, facts.Units, Lettering.Plain(10));
            dimensions.Size(picture.Design);
            if (preparation.Seating is not null)
                dimensions.AboveBrim(picture.Design);
            new FindingMarks(pad, view, dimensions.Plates).Draw(Holds());
        });
    }
}
