using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.TestKit.Tapes;

/// <summary>
/// Designs by chance, of 5 to 60 columns, fills, outlines and two-stroke letters in 1 to 8 colors: they overlap, hide
/// travel, float, trim and tie in every mix. The same number gives the same design.
/// </summary>
public sealed class RandomDesign
{
    private const ulong Seed = 0xCA9_0001;
    private const int HalfWidth = 520;
    private const int Height = 430;

    private static readonly (string Name, string Color)[] Palette =
    [
        ("Navy", "#1B2A5C"), ("Sand", "#D9C7A0"), ("Red", "#B3202A"), ("White", "#F7F7F2"),
        ("Gold", "#C9972B"), ("Moss", "#4F6B3A"), ("Slate", "#5B6770"), ("Plum", "#5E2750"),
    ];

    private readonly Chance _chance;
    private readonly Draft _draft = new();

    private RandomDesign(int number, int most)
    {
        _chance = new(unchecked(Seed + ((ulong)number << 20)));
        var figures = _chance.From(5, most);
        Blocks = Math.Min(_chance.From(1, 8), figures);
        IsTied = _chance.In100(60);
        Spools = _chance.In100(25) ? _chance.From(1, Blocks) : Blocks;
        for (var figure = 0; figure < figures; figure++)
            Sew(figure, isNewBlock: figure * Blocks / figures != (figure - 1) * Blocks / figures);
    }

    public int Blocks { get; }

    /// <summary>Different threads; fewer than blocks where a thread comes back.</summary>
    public int Spools { get; }

    public Draft Draft => _draft;

    public IReadOnlyList<TicketThread> Threads => [.. Enumerable.Range(0, Blocks).Select(block => new TicketThread
    {
        Block = block + 1,
        Name = Palette[block % Spools].Name,
        Color = Palette[block % Spools].Color,
    })];

    private bool IsTied { get; }

    /// <param name="number">Any.</param>
    /// <param name="most">Most figures, at least 5.</param>
    public static RandomDesign Of(int number, int most = 60) => new(number, most);

    private void Sew(int figure, bool isNewBlock)
    {
        var kind = _chance.From(0, 9);
        var size = kind switch
        {
            < 4 => new TapePoint(_chance.From(12, 60), _chance.From(50, 160)),
            < 6 => new TapePoint(_chance.From(60, 300), _chance.From(50, 180)),
            _ => new TapePoint(_chance.From(40, 160), _chance.From(50, 140)),
        };
        var foot = new TapePoint(_chance.From(-HalfWidth, HalfWidth - size.X), _chance.From(0, Height - size.Y));
        Reach(foot, isFirst: figure == 0, isNewBlock);
        var box = new Box(foot.X, foot.Y, foot.X + size.X, foot.Y + size.Y);
        _draft.Stitch(foot);
        Tie(box);
        SewIn(box, kind);
        Tie(box);
    }

    private void Reach(TapePoint foot, bool isFirst, bool isNewBlock)
    {
        if (isFirst)
            _draft.Move(foot);
        else if (isNewBlock)
            _draft.ColorStop().Move(foot);
        else if (_chance.In100(55))
            _draft.Trim(foot);
        else if (_chance.In100(70))
            _draft.Run(_chance.From(20, 35), _draft.At, foot);
        else if ((foot - _draft.At).Reach <= 200)
            _draft.Move(foot);
        else
            _draft.Trim(foot);
    }

    private void Tie(Box box)
    {
        if (IsTied)
            _draft.Tie(box.Center);
    }

    private void SewIn(Box box, int kind)
    {
        switch (kind)
        {
            case < 4:
                _draft.Sew(Slanted(box));
                break;
            case < 6:
                _draft.Sew(Fill.Of(box) with { UnderlayPitch = _chance.In100(70) ? 24 : 0 });
                break;
            case < 8:
                Letter(box);
                break;
            case 8:
                _draft.Run(_chance.From(18, 30), new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top), new(box.Left, box.Bottom));
                break;
            default:
                _draft.Sew(new Fill([new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Center.X, box.Top)]));
                break;
        }
    }

    private Column Slanted(Box box)
    {
        var lean = new TapePoint(_chance.From(-30, 30), 0);
        TapePoint foot = new(box.Left, box.Bottom), head = new TapePoint(box.Left, box.Top) + lean, across = new(box.Width, 0);
        return new Column(new([foot, head]), new([foot + across, head + across]))
        {
            UnderlayStitch = _chance.In100(70) ? 25 : 0,
            Pitch = _chance.From(4, 5),
        };
    }

    /// <summary>An upright stroke and a level one, joined by thread.</summary>
    private void Letter(Box box)
    {
        var stroke = _chance.From(12, 30);
        _draft.Sew(Column.Upright(new(box.Left, box.Bottom), stroke, box.Height));
        var level = new Column(
            new([new(box.Left, box.Bottom), new(box.Right, box.Bottom)]),
            new([new(box.Left, box.Bottom + stroke), new(box.Right, box.Bottom + stroke)]))
        { UnderlayStitch = 0 };
        if (_chance.In100(50))
            _draft.Run(25, _draft.At, new(box.Left, box.Bottom));
        _draft.Sew(level);
    }
}
