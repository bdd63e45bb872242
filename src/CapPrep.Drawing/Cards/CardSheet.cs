using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;

namespace CapPrep.Drawing.Cards;

/// <summary>
/// The card: one upright page, the framing bench keeps the upper half and the machine the lower one. Where nobody may
/// sew it is a HOLD sheet instead. No text is under 10 points.
/// </summary>
public sealed class CardSheet
{
    internal const int Margin = 800;

    private readonly JobFacts _facts;
    private readonly Preparation _preparation;
    private readonly SheetWords _words;
    private readonly JobWords _job;
    private readonly SheetPad _pad = new();

    private CardSheet(JobFacts facts, Preparation preparation)
    {
        (_facts, _preparation) = (facts, preparation);
        _words = SheetWords.In(facts.Language);
        _job = new JobWords(facts, preparation, _words);
    }

    public static Sheet Lay(JobFacts facts, Preparation preparation) => new CardSheet(facts, preparation).Lay();

    private bool Sews => _preparation is { Seating: not null, Setup.Style: not null } && _preparation.Verdict.Sews();

    private Sheet Lay()
    {
        var (width, height) = PaperSizes.Upright(_facts.Paper);
        var page = new SheetBox(0, 0, width, height).Inset(Margin);
        if (Sews)
            Halves(page);
        else
            new HoldPage(_pad, _facts, _preparation, _words, _job).Lay(page);
        return Finish(width, height);
    }

    private void Halves(SheetBox page)
    {
        var head = new CardHead(_pad, _facts, _words, _job);
        var machine = new MachineHalf(_pad, _facts, _preparation, _words);
        var lower = CardHead.ShortHeight + machine.Height(page.Width);
        var upper = page.TopPart(page.Height - lower - 600);
        var rest = page.Below(upper.Height + 600);
        _pad.Group(_words["group.framing"], null, () =>
        {
            head.Lay(upper, _words["card.framing"], full: true);
            new FramingHalf(_pad, _facts, _preparation, _words).Lay(upper.Below(CardHead.FullHeight));
        });
        CutLine(page, upper.Bottom + 300);
        _pad.Group(_words["group.machine"], null, () =>
        {
            head.Lay(rest, _words["card.machine"], full: false);
            machine.Lay(rest.Below(CardHead.ShortHeight));
        });
    }

    private void CutLine(SheetBox page, int y)
    {
        var set = Lettering.Plain(10).In(Ink.Soot);
        var room = new SheetBox(page.X, y - (set.LineHeight / 2), page.Width, set.LineHeight);
        var half = (TextFit.Width(_words["card.cut"], set.Font, set.Size) / 2) + 200;
        var middle = room.Center.X;
        _pad.Line(new(0, y), new(middle - half, y), new Stroke(20, Ink.Black, Dash.Long));
        _pad.Line(new(middle + half, y), new(page.Right + Margin, y), new Stroke(20, Ink.Black, Dash.Long));
        _pad.Text(_words["card.cut"], room, set, Align.Center);
    }

    private Sheet Finish(int width, int height) => new()
    {
        Width = width,
        Height = height,
        Title = Sews
            ? _words.Say("card.title", ("order", _job.Order), ("tape", _facts.TapeName))
            : _words.Say("hold.title", ("order", _job.Order), ("design", _job.Design)),
        Description = Sews
            ? _words.Say(
                "card.description",
                ("order", _job.Order),
                ("count", _preparation.Ticket.Received.Quantity.ToString(CultureInfo.InvariantCulture)),
                ("style", _preparation.Setup.Style!.Name),
                ("tape", _facts.TapeName),
                ("base", Lengths.Mm(_preparation.Seating!.Box.ToMillimeters().Bottom)))
            : _words.Say("hold.description", ("order", _job.Order), ("verdict", _words.Of(_preparation.Verdict))),
        Language = _words.Language,
        Created = _facts.Received,
        Marks = _pad.Marks,
    };
}
