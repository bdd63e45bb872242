using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.TestKit.Tapes;

/// <summary>
/// Designs made by chance from a seed: columns, fills and lines on the front of a cap, in a few colors, joined, floated
/// or trimmed. The same seed gives the same bytes everywhere.
/// </summary>
public sealed class RandomDesign
{
    private const int HalfWidth = 280;
    private const int Height = 400;

    private readonly Draft _draft = new();
    private ulong _state;

    private RandomDesign(ulong seed) => _state = seed;

    /// <summary>A whole file of 2 to <paramref name="most"/> shapes in 1 to 6 colors.</summary>
    public static byte[] Of(ulong seed, int most = 40)
    {
        var design = new RandomDesign(seed);
        var shapes = 2 + design.Below(most - 1);
        var colors = 1 + design.Below(Math.Min(6, shapes));
        for (var shape = 0; shape < shapes; shape++)
            design.Shape(shape, isNewColor: shape > 0 && shape * colors / shapes != (shape - 1) * colors / shapes);
        return design._draft.ToBytes("CHANCE");
    }

    private void Shape(int index, bool isNewColor)
    {
        var corner = new TapePoint(Below(2 * HalfWidth) - HalfWidth, Below(Height));
        Reach(index, isNewColor, corner);
        switch (Below(4))
        {
            case 0:
                _draft.Sew(Fill.Of(new(corner.X, corner.Y, corner.X + 40 + Below(160), corner.Y + 30 + Below(120))));
                break;
            case 1:
                _draft.Run(25, [corner, corner + new TapePoint(30 + Below(200), Below(60)), corner + new TapePoint(Below(80), 40 + Below(90))]);
                break;
            default:
                _draft.Sew(Column.Upright(corner, 14 + Below(40), 40 + Below(120)) with { UnderlayStitch = Below(3) == 0 ? 0 : 25 });
                break;
        }

        if (Below(2) == 0)
            _draft.Tie(corner);
    }

    /// <summary>By color stop, trim, float or plain thread.</summary>
    private void Reach(int index, bool isNewColor, TapePoint to)
    {
        if (index == 0)
            _draft.Move(to);
        else if (isNewColor)
            _draft.ColorStop().Move(to);
        else if (Below(5) is var way && way < 3)
            _draft.Trim(to);
        else if (way == 3 && (to - _draft.At).Reach < 240)
            _draft.Move(to);
        else
            _draft.Run(30, [_draft.At, to]);
        _draft.Stitch(to);
    }

    private int Below(int bound) => (int)Math.BigMul(Next(), (ulong)bound, out _);

    /// <summary>SplitMix64 (Steele, Lea, Flood, 2014).</summary>
    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = _state;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }
}
