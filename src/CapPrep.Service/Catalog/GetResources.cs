using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Catalog;

/// <summary>Gives lists, single resources at any version, and the versions there are.</summary>
internal sealed class GetResources(CatalogShelf shelf, ShopScope scope)
{
    public async Task<IResult> List(ResourceKind kind, HttpRequest request, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query, "limit", "cursor");
        var page = Page.Read(query, kind.Path);
        if (query.Refusal is { } refusal)
            return refusal;
        var rows = await shelf.List(scope.Required, kind.Path, page.After, page.Limit + 1, cancel);
        return TypedResults.Bytes(page.Written(rows, row => row.Id, (writer, row) => ResourceJson.Write(writer, kind, row, inList: true)), Json.ContentType);
    }

    public async Task<IResult> One(ResourceKind kind, string id, HttpRequest request, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query, "version");
        var version = Version(query);
        if (query.Refusal is { } refusal)
            return refusal;
        var row = version is { } wanted
            ? await shelf.At(scope.Required, kind.Path, id, wanted, cancel)
            : await shelf.Latest(scope.Required, kind.Path, id, cancel);
        return row is null ? Missing(kind, id, version) : new ResourceAnswer(kind, row);
    }

    public async Task<IResult> Versions(ResourceKind kind, string id, HttpRequest request, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query, "limit", "cursor");
        var page = Page.Read(query, $"{kind.Path}/{id}");
        var before = Before(page, query);
        if (query.Refusal is { } refusal)
            return refusal;
        var rows = await shelf.Versions(scope.Required, kind.Path, id, before, page.Limit + 1, cancel);
        return rows.Length == 0 && before is null
            ? Missing(kind, id)
            : TypedResults.Bytes(page.Written(rows, row => row.Version.ToString(CultureInfo.InvariantCulture), ResourceJson.WriteVersion), Json.ContentType);
    }

    /// <summary>Reads <c>version</c>; null: the newest.</summary>
    internal static int? Version(QueryReader query)
    {
        if (query.Text("version") is not { } text)
            return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var version) && version > 0)
            return version;
        query.Fault("version", ViolationCodes.OutOfRange, "A version is a whole number of at least 1.");
        return null;
    }

    /// <summary>The version that the page before ended with; null: at the newest.</summary>
    private static int? Before(Page page, QueryReader query)
    {
        if (page.After is null)
            return null;
        if (int.TryParse(page.After, NumberStyles.None, CultureInfo.InvariantCulture, out var version))
            return version;
        query.Fault("cursor", ViolationCodes.Contradicts, "This cursor was not given for this list.");
        return null;
    }

    internal static Refusal Missing(ResourceKind kind, string id, int? version = null) => new(
        Problems.NotFound,
        string.Create(CultureInfo.InvariantCulture, $"There is no {kind.Noun} '{id}'{(version is null ? "" : $" of version {version}")}."));
}
