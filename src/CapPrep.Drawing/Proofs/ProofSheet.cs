using CapPrep.Drawing.Caps;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;

namespace CapPrep.Drawing.Proofs;

/// <summary>
/// The proof: the design on the cap with what was found, numbered on the drawing and told in the margin. Landscape.
/// </summary>
public sealed class ProofSheet
{
    private const int Margin = 800;
    private const int HeadHeight = 2200;
    private const int FootHeight = 900;
    private const int LegendWidth = 8200;
    private const int Gap = 300;

    /// <summary>Width of the front shown either side of the seam, mm, where the design is not wider.</summary>
    private const double HalfFront = 94;

    private readonly JobFacts _facts;
    private readonly Preparation _preparation;
    private readonly SheetWords _words;
    private readonly JobWords _job;
    private readonly SheetPad _pad = new();

    private ProofSheet(JobFacts facts, Preparation preparation)
    {
        (_facts, _preparation) = (facts, preparation);
        _words = SheetWords.In(facts.Language);
        _job = new JobWords(facts, preparation, _words);
    }

    public static Sheet Lay(JobFacts facts, Preparation preparation) => new ProofSheet(facts, preparation).Lay();

    private Sheet Lay()
    {
        var (height, width) = PaperSizes.Upright(_facts.Paper);
        var page = new SheetBox(0, 0, width, height).Inset(Margin);
        Head(page.TopPart(HeadHeight));
        var body = page.Below(HeadHeight + Gap) with { Height = page.Height - HeadHeight - FootHeight - (2 * Gap) };
        var picture = new CapPicture(_pad, _preparation);
        var margin = new ProofMargin(_pad, _words, _preparation, picture.Inks);
        var orders = OrderPair.Of(_pad, _words, _preparation);
        var rooms = ProofRooms.Of(body, LegendWidth, window => View(picture, window), orders is null ? null : margin);
        margin.Lay(rooms.Margin, rooms.Orders);
        var view = Picture(picture, rooms.Window, margin.Told);
        if (rooms.Orders is { } room)
            orders?.Lay(room);
        Foot(page.Below(page.Height - FootHeight), view);
        return Finish(width, height);
    }

    private void Head(SheetBox box) => _pad.Group(_words["group.head"], null, () =>
    {
        var verdict = box.LeftPart(7000);
        var sews = _preparation.Verdict.Sews();
        _pad.Box(verdict, new Stroke(50, Ink.Black), sews ? Ink.White : Ink.Black);
        _pad.Text(
            _words.Of(_preparation.Verdict), verdict.Inset(250), Lettering.Strong(18).DownTo(10).In(sews ? Ink.Black : Ink.White), Align.Center);
        var right = box.RightOf(box.Width - LegendWidth);
        var middle = box.RightOf(7000 + Gap) with { Width = right.X - verdict.Right - (2 * Gap) };
        _pad.Text(_words.Say("order", ("order", _job.Order)), middle.TopPart(900), Lettering.Strong(18).DownTo(10));
        _pad.Text(_job.Particulars, middle.Below(900).TopPart(600), Lettering.Plain(11).DownTo(8));
        _pad.Text(CapWords(), middle.Below(1550).TopPart(550), Lettering.Plain(10).DownTo(8).In(Ink.Soot));
        _pad.Text(_job.NumberAndRevision, right.TopPart(900), Lettering.Strong(14).DownTo(10));
        _pad.Text(_preparation.Verdict.Sews() ? _facts.TapeName : "", right.Below(900).TopPart(600), Lettering.Plain(11).DownTo(8));
        _pad.Text(_job.Received, right.Below(1550).TopPart(550), Lettering.Plain(9).DownTo(7).In(Ink.Soot));
        _pad.Line(new(box.X, box.Bottom + (Gap / 2)), new(box.Right, box.Bottom + (Gap / 2)), new Stroke(20, Ink.Black));
    });

    private static CapView View(CapPicture picture, SheetBox window) => picture.View(window, HalfFront, 14);

    private CapView Picture(CapPicture picture, SheetBox window, IReadOnlyList<Finding> told)
    {
        var view = View(picture, window);
        _pad.Group(_words[_preparation.Seating is null ? "group.design" : "group.cap"], window, () =>
        {
            picture.Draw(view, colored: true);
            DoubtHatch.Draw(_pad, view, _words["group.doubt"], _preparation.Doubtful.Select(piece => piece.BoxMm).OfType<BoxMm>());
            var dimensions = new Dimensions(_pad, view, _facts.Units, Lettering.Plain(9));
            dimensions.Size(picture.Design);
            if (_preparation.Seating is not null)
                dimensions.AboveBrim(picture.Design);
            new FindingMarks(_pad, view, dimensions.Plates).Draw(told.Where(finding => finding.State != FindingState.Solved));
        });
        return view;
    }

    private void Foot(SheetBox box, CapView view)
    {
        if (view.Reduction == 1)
            ScaleRule.Draw(_pad, new SheetPoint(box.X, box.Y + 350), _words["rule"], Lettering.Plain(8));
        var says = view.Reduction == 1
            ? _words["proof.trueSize"]
            : _words.Say("proof.reduced", ("n", view.Reduction.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        var note = _preparation.Seating is null ? _words["proof.noStyle"] : _preparation.Summary.Lead;
        var doubt = _preparation.Doubtful.Any(piece => piece.BoxMm is not null) ? _words["proof.doubt"] : null;
        _pad.Paragraph(JobWords.Joined(says, doubt, note), box.RightOf(7000), Lettering.Plain(9));
    }

    private string CapWords() => JobWords.Joined(
        _preparation.Setup.Style?.Name ?? _preparation.Ticket.Received.CapSku,
        _preparation.Ticket.Received.CapColor?.Name,
        _preparation.Setup.Frame.Name,
        _preparation.Setup.Machine.Name);

    private Sheet Finish(int width, int height) => new()
    {
        Width = width,
        Height = height,
        Title = _words.Say("proof.title", ("order", _job.Order), ("design", _job.Design)),
        Description = _words.Say(
            "proof.description", ("order", _job.Order), ("verdict", _words.Of(_preparation.Verdict)), ("findings", FindingsSaid())),
        Language = _words.Language,
        Created = _facts.Received,
        Marks = _pad.Marks,
    };

    private string FindingsSaid()
    {
        var findings = ProofMargin.ForPeople(_preparation);
        return findings.Count == 0
            ? _words["proof.noFindings"]
            : _words.Say("proof.findingsSaid", ("list", string.Join(' ', findings.Take(ProofMargin.MostFindings)
                .Select(Said))));
    }

    private string Said(Finding finding) => finding.State == FindingState.Solved
        ? $"{_words["state.solved"]}: {finding.Message}"
        : $"{_words.Of(finding.Severity)}: {finding.Message}";
}
