using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;
using CapPrep.Engine;
using CapPrep.Engine.Reading;

namespace CapPrep.Drawing.Cards;

/// <summary>What the operator needs: who turns the design, the needles in order, what to key in, the first cap, cautions.</summary>
internal sealed class MachineHalf(SheetPad pad, JobFacts facts, Preparation preparation, SheetWords words)
{
    private const int TurnedHeight = 620;
    private const int NeedleLineHeight = 900;
    private const int CaptionHeight = 480;
    private const int Gap = 150;
    private const int KeyInGap = 40;
    private const int MostLines = 4;

    private static readonly Lettering Body = Lettering.Plain(10);
    private static readonly Lettering Strong = Lettering.Strong(10);

    private readonly KeyIn _keyIn = new(facts, preparation, words);
    private readonly NeedleRows _rows = new(pad, preparation, words);

    /// <summary>Needed below the head at that width, 0.01 mm.</summary>
    public int Height(int width) =>
        TurnedHeight + NeedleLineHeight + Gap + MiddleHeight(width) + Gap + CautionsHeight(width);

    public void Lay(SheetBox box)
    {
        pad.Text(_keyIn.Turned, box.TopPart(TurnedHeight), Lettering.Strong(13).DownTo(10));
        NeedleLine(box.Below(TurnedHeight).TopPart(NeedleLineHeight));
        var middle = box.Below(TurnedHeight + NeedleLineHeight + Gap).TopPart(MiddleHeight(box.Width));
        var left = middle.LeftPart(Left(box.Width));
        var right = middle.RightOf(left.Width + (2 * Gap));
        _rows.Lay(left);
        KeyInList(right);
        FirstCap(FirstCapOnLeft(box.Width)
            ? left.Below(_rows.Height + Gap).TopPart(FirstCapHeight(left.Width))
            : right.Below(KeyInHeight(right.Width) + Gap).TopPart(FirstCapHeight(right.Width)));
        Cautions(box.Below(box.Height - CautionsHeight(box.Width)));
    }

    private void NeedleLine(SheetBox box)
    {
        pad.Box(box, new Stroke(40, Ink.Black));
        pad.Text(KeyIn.NeedleLine(preparation.NeedlePlan), box.Inset(150), Lettering.Strong(18).DownTo(10));
    }

    private void KeyInList(SheetBox box)
    {
        pad.Text(words["card.keyIn"], box.TopPart(CaptionHeight), Lettering.Strong(11));
        var y = CaptionHeight;
        foreach (var line in _keyIn.Lines())
            y += pad.Paragraph(line, box.Below(y).TopPart(MostLines * Body.LineHeight), Body) + KeyInGap;
    }

    private void FirstCap(SheetBox box)
    {
        pad.Box(box, new Stroke(preparation.FirstCap.Is == FirstCapIs.Required ? 60 : 20, Ink.Black));
        pad.Paragraph(FirstCapWords, box.Inset(120), Strong);
    }

    private string FirstCapWords
    {
        get
        {
            var first = words["card.firstCap." + Words<FirstCapIs>.Standard.Of(preparation.FirstCap.Is)];
            return preparation.FirstCap.Because.Count == 0
                ? first
                : first + " " + words.Say("card.firstCap.because", ("why", string.Join("; ", preparation.FirstCap.Because)));
        }
    }

    private void Cautions(SheetBox box)
    {
        pad.Text(words["card.cautions"], box.TopPart(CaptionHeight), Lettering.Strong(11));
        pad.Paragraph(words["cautions"], box.Below(CaptionHeight), Body);
    }

    private int MiddleHeight(int width) => FirstCapOnLeft(width)
        ? Math.Max(KeyInHeight(Right(width)), _rows.Height + Gap + FirstCapHeight(Left(width)))
        : Math.Max(KeyInHeight(Right(width)) + Gap + FirstCapHeight(Right(width)), _rows.Height);

    /// <summary>It stands where there is more room.</summary>
    private bool FirstCapOnLeft(int width) => _rows.Height < KeyInHeight(Right(width));

    private int KeyInHeight(int width) =>
        CaptionHeight + _keyIn.Lines().Sum(line => (LinesOf(line, Body, width, MostLines) * Body.LineHeight) + KeyInGap);

    private int FirstCapHeight(int width) => (LinesOf(FirstCapWords, Strong, width - 240, MostLines) * Strong.LineHeight) + 280;

    private int CautionsHeight(int width) => CaptionHeight + (LinesOf(words["cautions"], Body, width, 20) * Body.LineHeight) + 20;

    private static int Left(int width) => width * 40 / 100;

    private static int Right(int width) => width - Left(width) - (2 * Gap);

    private static int LinesOf(string text, Lettering set, int width, int most) =>
        TextFit.Wrap(text, set.Font, set.Size, width, most).Count;
}
