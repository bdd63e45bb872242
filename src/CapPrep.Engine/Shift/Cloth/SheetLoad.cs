namespace CapPrep.Engine.Shift.Cloth;

/// <summary>
/// Gathers what stitches do to a sheet: where they lie, for means over them, and how they pull. Both are summed per
/// square first, since shares and strains of a square are linear in the place of a stitch.
/// </summary>
internal sealed class SheetLoad(SheetShape shape)
{
    private readonly SortedDictionary<int, Moments> _places = [];
    private readonly SortedDictionary<int, Pull> _pulls = [];

    /// <summary>Covered area that lies on the sheet, mm2.</summary>
    internal double AreaMm2 => _places.Values.Sum(moments => moments.Area);

    /// <summary>Covered area in the squares, mm2.</summary>
    internal double AreaIn(int square) => _places.TryGetValue(square, out var moments) ? moments.Area : 0;

    internal IEnumerable<int> PulledSquares => _pulls.Keys;

    /// <summary>Covered cloth around a point; what lies beyond the sheet is left out.</summary>
    internal void Cover(double x, double y, double areaMm2)
    {
        if (shape.At(x, y) is { } at)
            _places[at.Square] = _places.GetValueOrDefault(at.Square) + new Moments(areaMm2, areaMm2 * at.Xi, areaMm2 * at.Eta, areaMm2 * at.Xi * at.Eta);
    }

    /// <summary>Stitches around a point.</summary>
    /// <param name="strainArea">The strain they would leave in free cloth, times the area it happens in, mm2.</param>
    internal void Sew(double x, double y, Strain strainArea)
    {
        if (shape.At(x, y) is { } at)
            _pulls[at.Square] = _pulls.GetValueOrDefault(at.Square) + new Pull(strainArea, at.Xi * strainArea, at.Eta * strainArea);
    }

    /// <summary>How much they draw together in a square, all directions taken together, mm2.</summary>
    internal double PullIn(int square) => -(_pulls[square].Sum.Across + _pulls[square].Sum.Up);

    /// <summary>Lets the stitches of one square pull less.</summary>
    internal void Weaken(int square, double factor) => _pulls[square] = factor * _pulls[square];

    /// <summary>Weights that give the mean shift across of what is covered; empty when nothing is.</summary>
    internal Spread MeanAcross()
    {
        var weights = new Dictionary<int, double>();
        var area = AreaMm2;
        foreach (var (square, moments) in _places)
            AddShares(weights, shape.CornersOf(square), moments, area);
        return Spread.Of(weights);
    }

    /// <summary>Forces at the nodes, N.</summary>
    internal Spread Forces(SheetMaterial material)
    {
        var forces = new Dictionary<int, double>();
        foreach (var (square, pull) in _pulls)
            AddForces(forces, shape.CornersOf(square), pull.Under(material));
        return Spread.Of(forces);
    }

    private static void AddShares(Dictionary<int, double> weights, (int, int, int, int) corners, Moments moments, double area)
    {
        for (var corner = 0; corner < Square.Corners; corner++)
        {
            var (xi, eta) = (Square.ShareOf(corner, 1, 0) - Square.ShareOf(corner, 0, 0), Square.ShareOf(corner, 0, 1) - Square.ShareOf(corner, 0, 0));
            var share = (0.25 * moments.Area) + (xi * moments.Xi) + (eta * moments.Eta) + (4 * xi * eta * moments.Both);
            Add(weights, 2 * Of(corners, corner), share / area);
        }
    }

    private void AddForces(Dictionary<int, double> forces, (int, int, int, int) corners, Pull stress)
    {
        for (var corner = 0; corner < Square.Corners; corner++)
        {
            var (across, up) = (Square.AcrossOf(corner, 0, shape.MeshMm), Square.UpOf(corner, 0, shape.MeshMm));
            var (acrossByEta, upByXi) = (Square.AcrossOf(corner, 1, shape.MeshMm) - across, Square.UpOf(corner, 1, shape.MeshMm) - up);
            Add(forces, 2 * Of(corners, corner), (across * stress.Sum.Across) + (acrossByEta * stress.ByEta.Across) + (up * stress.Sum.Shear) + (upByXi * stress.ByXi.Shear));
            Add(forces, (2 * Of(corners, corner)) + 1, (up * stress.Sum.Up) + (upByXi * stress.ByXi.Up) + (across * stress.Sum.Shear) + (acrossByEta * stress.ByEta.Shear));
        }
    }

    private static int Of((int, int, int, int) corners, int corner) =>
        corner switch { 0 => corners.Item1, 1 => corners.Item2, 2 => corners.Item3, _ => corners.Item4 };

    private static void Add(Dictionary<int, double> sums, int unknown, double value) =>
        sums[unknown] = sums.GetValueOrDefault(unknown) + value;

    private readonly record struct Moments(double Area, double Xi, double Eta, double Both)
    {
        public static Moments operator +(Moments one, Moments other) =>
            new(one.Area + other.Area, one.Xi + other.Xi, one.Eta + other.Eta, one.Both + other.Both);
    }

    private readonly record struct Pull(Strain Sum, Strain ByXi, Strain ByEta)
    {
        public static Pull operator +(Pull one, Pull other) =>
            new(one.Sum + other.Sum, one.ByXi + other.ByXi, one.ByEta + other.ByEta);

        public static Pull operator *(double factor, Pull pull) =>
            new(factor * pull.Sum, factor * pull.ByXi, factor * pull.ByEta);

        internal Pull Under(SheetMaterial material) =>
            new(material.StressOf(Sum), material.StressOf(ByXi), material.StressOf(ByEta));
    }
}
