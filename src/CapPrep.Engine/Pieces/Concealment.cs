using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces.Lines;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Finds what lies under or over closed stitches, whoever sews them.</summary>
internal sealed class Concealment
{
    private readonly StitchSequence _stitches;
    private readonly IReadOnlyList<int> _threadOfBlock;
    private readonly CellMap _latest;

    /// <param name="stitches">The stitches.</param>
    /// <param name="threadOfBlock">Thread of each block.</param>
    /// <param name="sections">All sections in time order, painted.</param>
    /// <param name="box">Box of all penetrations.</param>
    public Concealment(StitchSequence stitches, IReadOnlyList<int> threadOfBlock, IEnumerable<Section> sections, Box box)
    {
        (_stitches, _threadOfBlock) = (stitches, threadOfBlock);
        _latest = new(stitches.Grid, box);
        foreach (var closed in sections.Where(section => section.Hides))
            _latest.Paint(closed.Blanket, closed.Interval.First);
    }

    /// <summary>The sections with lines cut where they go under cover or come out of it.</summary>
    public IEnumerable<Section> WithLinesCut(IEnumerable<Section> sections) => sections.SelectMany(CutLine);

    /// <summary>Most of a section lies under closed stitches that are sewn later; to be asked before <see cref="Note"/>.</summary>
    public bool Hides(Section section) =>
        Percent(_latest.CountAbove(section.Cover, section.Interval.First), section.Cover) >= RoleFinder.HiddenFrom;

    /// <summary>Notes on every section that may be hidden how much of it lies under and over closed stitches.</summary>
    public void Note(IReadOnlyList<Section> sections)
    {
        foreach (var open in sections.Where(section => section.MayBeHidden))
            open.HiddenPercent = Percent(_latest.CountAbove(open.Cover, open.Interval.First), open.Cover);
        NoteByThread(sections);
        NoteOnTop(sections);
    }

    private void NoteByThread(IReadOnlyList<Section> sections)
    {
        foreach (var thread in sections.GroupBy(section => ThreadOf(section)))
        {
            _latest.Clear();
            foreach (var closed in thread.Where(section => section.Hides))
                _latest.Paint(closed.Blanket, closed.Interval.First);
            foreach (var open in thread.Where(section => section.MayBeHidden))
                open.HiddenBySameThreadPercent = Percent(_latest.CountAbove(open.Cover, open.Interval.First), open.Cover);
        }
    }

    private void NoteOnTop(IReadOnlyList<Section> sections)
    {
        _latest.Clear();
        foreach (var section in sections)
        {
            if (!section.IsClosed)
                section.OnTopPercent = Percent(_latest.CountEqual(section.Cover, ThreadOf(section)), section.Cover);
            if (section.Hides)
                _latest.Paint(section.Blanket, ThreadOf(section));
        }
    }

    private int ThreadOf(Section section) => _threadOfBlock[section.Block - 1];

    private static int Percent(int cells, Cover cover) => cover.Area == 0 ? 0 : 100 * cells / cover.Area;

    private IEnumerable<Section> CutLine(Section section)
    {
        if (section.Class != StitchClass.Running)
            return [section];
        var stretches = Stretch.Among(_stitches, section.Interval, IsHidden);
        return stretches.Count < 2
            ? [section]
            : stretches.Select(stretch => Painted(new(_stitches, section.Strand, stretch.Interval, StitchClass.Running, null)));
    }

    private Section Painted(Section section)
    {
        section.Paint(_stitches);
        return section;
    }

    private bool IsHidden(int index)
    {
        var (hidden, all) = (0, 0);
        foreach (var (column, row) in CellLine.Between(_stitches.Grid, _stitches.At(index - 1), _stitches.At(index)))
        {
            all++;
            hidden += _latest[column, row] > index ? 1 : 0;
        }

        return 4 * hidden >= 3 * all;
    }
}
