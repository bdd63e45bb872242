using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Texts;

namespace CapPrep.Drawing.Cards;

/// <summary>The head that both halves carry, so that either can be matched to the tape when they are apart.</summary>
internal sealed class CardHead(SheetPad pad, JobFacts facts, SheetWords words, JobWords job)
{
    public const int FullHeight = 2550;

    /// <summary>Without the line that says when and from where the tape came.</summary>
    public const int ShortHeight = 2150;

    private const int BandWidth = 4000;
    private const int Below = 200;

    /// <param name="box">Its upper part is used: <see cref="FullHeight"/> or <see cref="ShortHeight"/>.</param>
    /// <param name="half">Which half it is.</param>
    /// <param name="full">With the line that says when and from where the tape came.</param>
    public void Lay(SheetBox box, string half, bool full)
    {
        var head = box.TopPart((full ? FullHeight : ShortHeight) - Below);
        Band(head.LeftPart(BandWidth), half);
        var code = head.RightOf(head.Width - head.Height);
        pad.Add(CodeMatrix.Qr(job.Code, code, Ink.Black));
        Names(head.RightOf(BandWidth + 300) with { Width = head.Width - BandWidth - code.Width - 600 }, full);
        pad.Line(new(box.X, head.Bottom + 90), new(box.Right, head.Bottom + 90), new Stroke(20, Ink.Black));
    }

    private void Band(SheetBox band, string half)
    {
        pad.Box(band, null, Ink.Black);
        pad.Text(words["band.sew"], band.TopPart(band.Height - 700), Lettering.Strong(34).In(Ink.White), Align.Center);
        pad.Text(half, band.Below(band.Height - 800).Inset(80), Lettering.Strong(12).DownTo(10).In(Ink.White), Align.Center);
    }

    private void Names(SheetBox box, bool full)
    {
        var first = box.TopPart(1080);
        var tape = Lettering.Strong(24).DownTo(18);
        var tapeWidth = Math.Min(5200, TextFit.Width(facts.TapeName, tape.Font, tape.Size) + 20);
        pad.Text(facts.TapeName, first.RightOf(first.Width - tapeWidth), tape, Align.Right);
        var order = pad.Text(job.Order, first.LeftPart(first.Width - tapeWidth - 300), Lettering.Strong(28).DownTo(24));
        pad.Text(job.ParticularsBelow(order), box.Below(1060).TopPart(460), Lettering.Strong(11).DownTo(10));
        if (full)
            pad.Text(job.Received, box.Below(1510).TopPart(420), Lettering.Plain(10));
        var last = box.Below(box.Height - 420);
        pad.Text(job.Code, last.LeftPart(last.Width * 6 / 10), Lettering.Plain(10));
        pad.Text(job.NumberAndRevision, last.RightOf(last.Width * 6 / 10), Lettering.Plain(10), Align.Right);
    }
}
