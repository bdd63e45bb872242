using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>Draws the marks of a sheet on a canvas whose unit is one millimeter.</summary>
/// <param name="canvas">Scaled to millimeters, origin in the upper left corner.</param>
/// <param name="faces">For the texts.</param>
/// <param name="smoothCodes">False where codes must keep hard pixel edges.</param>
internal sealed class SkiaPainter(SKCanvas canvas, Typefaces faces, bool smoothCodes) : IDisposable
{
    private readonly SKPaint _paint = new() { StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };

    public void Dispose() => _paint.Dispose();

    public void Draw(Sheet sheet)
    {
        foreach (var mark in sheet.Marks)
            Draw(mark);
    }

    private void Draw(Mark mark)
    {
        _paint.IsAntialias = true;
        switch (mark)
        {
            case LinesMark lines:
                Paint(SkiaPaths.Lines(lines.Lines, closed: false), lines.Stroke, null);
                break;
            case ShapeMark shape:
                Paint(SkiaPaths.Lines(shape.Rings, closed: true), null, shape.Fill);
                break;
            case PathMark path:
                Paint(SkiaPaths.Steps(path.Steps), path.Stroke, path.Fill);
                break;
            case BoxMark box:
                Paint(SkiaPaths.Box(box.Box), box.Stroke, box.Fill);
                break;
            case CircleMark circle:
                Paint(SkiaPaths.Circle(circle.Center, circle.Radius), circle.Stroke, circle.Fill);
                break;
            case TextMark text:
                Prepare(text.Ink, null);
                SkiaText.Draw(canvas, _paint, faces.Of(text.Font), text);
                break;
            case CodeMark code:
                _paint.IsAntialias = smoothCodes;
                Paint(SkiaPaths.Lines(CodeOutline.Rings(code), closed: true), null, code.Ink);
                break;
            case GroupStart group:
                canvas.Save();
                if (group.Clip is { } clip)
                    canvas.ClipRect(SkiaPaths.Rectangle(clip));
                break;
            case GroupEnd:
                canvas.Restore();
                break;
            default:
                throw new ArgumentException($"Nothing draws {mark.GetType().Name}.", nameof(mark));
        }
    }

    private void Paint(SKPath path, Stroke? stroke, Ink? fill)
    {
        using (path)
        {
            if (fill is { } ink)
            {
                Prepare(ink, null);
                canvas.DrawPath(path, _paint);
            }

            if (stroke is { } line)
            {
                Prepare(line.Ink, line);
                using var dashed = SkiaPaths.Dashed(path, line.Dash);
                canvas.DrawPath(dashed ?? path, _paint);
            }
        }
    }

    private void Prepare(Ink ink, Stroke? stroke)
    {
        _paint.Color = new SKColor(ink.Red, ink.Green, ink.Blue);
        _paint.Style = stroke is null ? SKPaintStyle.Fill : SKPaintStyle.Stroke;
        _paint.StrokeWidth = stroke is { } line ? SkiaPaths.Mm(line.Width) : 0;
    }
}
