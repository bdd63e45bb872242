using System.Globalization;
using CapPrep.Drawing.Caps;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Drawing.Cards;

/// <summary>
/// One row for each step of the needle plan: place in order, needle, thread with its swatch, stitches. What a person does
/// at the stop before a step has a row of its own.
/// </summary>
internal sealed class NeedleRows(SheetPad pad, Preparation preparation, SheetWords words)
{
    private const int RowHeight = 440;
    private const int MostRows = 12;
    private const int NeedleAt = 600;
    private const int SwatchAt = 2600;
    private const int NameAt = 3120;
    private const int StitchesWidth = 1400;

    private static readonly Lettering Body = Lettering.Plain(10);
    private static readonly Lettering Strong = Lettering.Strong(10);

    private readonly ThreadInks _inks = new(preparation);

    private IReadOnlyList<NeedleStep> Plan => preparation.NeedlePlan;

    /// <summary>0.01 mm, caption included.</summary>
    public int Height => (1 + Plan.Take(Shown).Sum(RowsOf) + (Plan.Count > Shown ? 2 : 0)) * RowHeight;

    /// <summary>Steps for which there is room.</summary>
    private int Shown
    {
        get
        {
            var rows = 0;
            return Plan.TakeWhile(step => (rows += RowsOf(step)) <= MostRows).Count();
        }
    }

    public void Lay(SheetBox box)
    {
        pad.Text(words["card.needles"], box.TopPart(RowHeight), Lettering.Strong(11));
        var row = 1;
        foreach (var step in Plan.Take(Shown))
        {
            if (step.Action != StopAction.None)
                pad.Text(words["action." + Words<StopAction>.Standard.Of(step.Action)], box.Below(row++ * RowHeight).TopPart(RowHeight).RightOf(NeedleAt), Strong);
            Row(step, box.Below(row++ * RowHeight).TopPart(RowHeight));
        }

        if (Plan.Count > Shown)
            pad.Paragraph(
                words.Say("card.moreSteps", ("count", Text(Plan.Count - Shown))),
                box.Below(row * RowHeight).TopPart(2 * RowHeight),
                Body);
    }

    private static int RowsOf(NeedleStep step) => step.Action == StopAction.None ? 1 : 2;

    private void Row(NeedleStep step, SheetBox box)
    {
        pad.Text(Text(step.Step), box.LeftPart(450), Strong, Align.Right);
        var needle = step.Needle is { } number ? words.Say("card.needle", ("needle", Text(number))) : words["card.needleOpen"];
        pad.Text(needle, box.RightOf(NeedleAt).LeftPart(SwatchAt - NeedleAt - 50), Strong);
        pad.Box(box.RightOf(SwatchAt).LeftPart(450).Inset(40), new Stroke(15, Ink.Stone), _inks.Of(step.Block));
        pad.Text(Thread(step), box.RightOf(NameAt) with { Width = box.Width - NameAt - StitchesWidth }, Body);
        var stitches = words.Say("card.stitches", ("count", Text(step.Stitches)));
        pad.Text(stitches, box.RightOf(box.Width - StitchesWidth + 50), Body, Align.Right);
    }

    private string Thread(NeedleStep step) => JobWords.Joined(
        step.Thread is { } thread ? thread.Name ?? thread.Color : words["card.noThread"],
        step.Thread?.Code);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
