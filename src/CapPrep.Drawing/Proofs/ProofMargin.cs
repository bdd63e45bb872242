using System.Globalization;
using CapPrep.Drawing.Caps;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Proofs;

/// <summary>The margin of a proof: the findings in their order of cost, then the threads.</summary>
internal sealed class ProofMargin(SheetPad pad, SheetWords words, Preparation preparation, ThreadInks inks)
{
    public const int MostFindings = 7;
    private const int MostInOneColumn = 6;
    private const int MostThreads = 20;
    private const int ThreadHeight = 440;
    private const int Caption = 600;

    private static readonly Lettering Body = Lettering.Plain(9);
    private static readonly Lettering Strong = Lettering.Strong(9);

    /// <summary>
    /// What a proof can tell: everything but the notes that nobody has to act on, which stand in the result and would
    /// only teach people not to look.
    /// </summary>
    public static IReadOnlyList<Finding> ForPeople(Preparation preparation) =>
        [.. preparation.Findings.Where(finding => finding.Severity != Severity.Note || finding.Remedy is not null)];

    /// <summary>The findings told in the margin; only their places are drawn.</summary>
    public IReadOnlyList<Finding> Told { get; private set; } = [];

    /// <summary>Height of the list of threads with its heading, 0.01 mm.</summary>
    public int ThreadsHeight => Caption + ((ThreadRows + (inks.Blocks > Threads ? 1 : 0)) * ThreadHeight);

    private int Threads => Math.Min(MostThreads, inks.Blocks);

    private int ThreadColumns => inks.Blocks > MostInOneColumn ? 2 : 1;

    private int ThreadRows => (Threads + ThreadColumns - 1) / ThreadColumns;

    private IReadOnlyList<Finding> Shown => [.. ForPeople(preparation).Take(MostFindings)];

    private bool OrderSolves => preparation.Order is { Used: UsedOrder.Proposed };

    /// <summary>What the findings take where nothing has to be left out, 0.01 mm.</summary>
    public int FindingsHeight(int width)
    {
        var shown = Shown;
        var headings = shown.Any(IsSolved) ? 2 : 1;
        var remarks = shown.All(IsSolved) || shown.Count < ForPeople(preparation).Count ? 1 : 0;
        return (headings * Caption) + (remarks * (Body.LineHeight + 150)) + Body.LineHeight + shown.Sum(finding => Height(finding, width));
    }

    /// <param name="box">Findings from its top, threads at its bottom.</param>
    /// <param name="kept">A part of it between the two that something else needs.</param>
    public void Lay(SheetBox box, SheetBox? kept)
    {
        var threads = box.Below(box.Height - ThreadsHeight);
        var bottom = kept is { } other && other.Overlaps(box) ? other.Y : threads.Y;
        pad.Group(words["group.findings"], null, () => Findings(box.TopPart(bottom - box.Y - 200)));
        pad.Group(words["group.threads"], null, () => ThreadList(threads));
    }

    /// <summary>First what is still there, then what is no longer.</summary>
    private void Findings(SheetBox box)
    {
        pad.Text(words["proof.findings"], box.TopPart(Caption), Lettering.Strong(11));
        var rest = box.Below(Caption);
        var findings = ForPeople(preparation);
        if (findings.All(IsSolved))
            rest = rest.Below(pad.Paragraph(words[findings.Count == 0 ? "proof.nothing" : "proof.nothingOpen"], rest, Body) + 150);
        var told = new List<Finding>();
        foreach (var finding in findings.Take(MostFindings))
        {
            var heading = IsSolved(finding) && !told.Any(IsSolved) ? Caption : 0;
            var height = Height(finding, rest.Width);
            if (heading + height + Body.LineHeight > rest.Height)
                break;
            if (heading > 0)
                pad.Text(words[OrderSolves ? "proof.solvedByOrder" : "proof.solvedByTape"], rest.TopPart(heading), Lettering.Strong(11));
            Row(finding, rest.Below(heading));
            rest = rest.Below(heading + height);
            told.Add(finding);
        }

        Told = told;
        if (told.Count < findings.Count)
            pad.Text(words.Say("proof.more", ("count", Text(findings.Count - told.Count))), rest.TopPart(Body.LineHeight), Body);
    }

    private static bool IsSolved(Finding finding) => finding.State == FindingState.Solved;

    private int Height(Finding finding, int width) =>
        Lines(finding).Sum(text => TextFit.Wrap(text, Body.Font, Body.Size, width - 800, 4).Count * Body.LineHeight)
        + (IsSolved(finding) ? 0 : Strong.LineHeight) + 150;

    private void Row(Finding finding, SheetBox box)
    {
        var text = box.RightOf(800);
        var y = 0;
        if (IsSolved(finding))
        {
            Tick(new SheetPoint(box.X + 300, box.Y + 200));
        }
        else
        {
            SeverityShape.Draw(pad, finding.Severity, new SheetPoint(box.X + 300, box.Y + 240), 240, null);
            pad.Text(words.Heading(finding), text.TopPart(Strong.LineHeight), Strong.DownTo(7));
            y = Strong.LineHeight;
        }

        foreach (var line in Lines(finding))
            y += pad.Paragraph(line, text.Below(y).TopPart(4 * Body.LineHeight), Body);
    }

    private void Tick(SheetPoint at) => pad.Add(new LinesMark(
        [[at.Move(-180, 0), at.Move(-50, 140), at.Move(200, -180)]], new Stroke(70, Ink.Slate)));

    private IEnumerable<string> Lines(Finding finding) =>
        new[] { finding.Message, words.Remedy(finding) }.OfType<string>();

    private void ThreadList(SheetBox box)
    {
        pad.Text(words["proof.threads"], box.TopPart(Caption), Lettering.Strong(11));
        var rows = box.Below(Caption);
        var width = box.Width / ThreadColumns;
        foreach (var (block, index) in Blocks().Take(Threads).Select((block, index) => (block, index)))
            Thread(block, new SheetBox(
                rows.X + (index / ThreadRows * width), rows.Y + (index % ThreadRows * ThreadHeight), width - 150, ThreadHeight));
        if (inks.Blocks > Threads)
            pad.Text(
                words.Say("proof.more", ("count", Text(inks.Blocks - Threads))), rows.Below(ThreadRows * ThreadHeight).TopPart(ThreadHeight), Body);
    }

    /// <summary>Received blocks in the order of the tape to sew; as received where there is no plan.</summary>
    private IEnumerable<int> Blocks() => preparation.NeedlePlan.Count > 0
        ? preparation.NeedlePlan.Select(step => step.Block)
        : Enumerable.Range(1, inks.Blocks);

    private void Thread(int block, SheetBox box)
    {
        var swatch = new SheetBox(box.X, box.Y + 60, 600, box.Height - 120);
        pad.Box(swatch, new Stroke(10, Ink.Stone), inks.Of(block));
        var name = inks.Thread(block) is { } thread
            ? JobWords.Joined(thread.Name ?? thread.Color, thread.Code)
            : words.Say("proof.gray", ("step", Text(block)));
        pad.Text(name, box.RightOf(800), Body.DownTo(7));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
