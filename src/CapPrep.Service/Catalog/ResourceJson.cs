using System.Text.Json;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Catalog;

/// <summary>Writes a resource as it was stored, with what the service adds: version, by, at, retired.</summary>
internal static class ResourceJson
{
    // What every row of the built-in book says would be most of a list of books.
    private const string LeftOutOfLists = "rules";

    /// <param name="inList">The built-in book's rows are left out.</param>
    public static void Write(Utf8JsonWriter writer, ResourceKind kind, CatalogRow row, bool inList = false)
    {
        using var body = JsonDocument.Parse(row.Body);
        var builtIn = kind.IsBuiltIn(row.Id);
        writer.WriteStartObject();
        writer.WriteString(kind.IdMember, row.Id);
        writer.WriteNumber("version", row.Version);
        foreach (var member in body.RootElement.EnumerateObject())
        {
            if (member.Name != kind.IdMember && member.Name != "version" && !(inList && builtIn && member.Name == LeftOutOfLists))
                member.WriteTo(writer);
        }

        if (builtIn)
            writer.WriteBoolean("builtIn", true);
        WriteEnd(writer, row);
    }

    /// <summary>One version without its body.</summary>
    public static void WriteVersion(Utf8JsonWriter writer, CatalogRow row)
    {
        writer.WriteStartObject();
        writer.WriteNumber("version", row.Version);
        writer.WriteString("sha256", row.Sha256);
        WriteEnd(writer, row);
    }

    private static void WriteEnd(Utf8JsonWriter writer, CatalogRow row)
    {
        writer.WriteString("by", row.By);
        writer.WriteString("at", Json.Time(row.At));
        writer.WriteBoolean("retired", row.Retired);
        writer.WriteEndObject();
    }
}

/// <summary>A resource as the body of an answer, under the strong tag of its version.</summary>
internal sealed record ResourceAnswer(ResourceKind Kind, CatalogRow Row) : IResult
{
    /// <summary>Address of the resource when it was made just now.</summary>
    public string? Location { get; init; }

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var tag = Precondition.Tag(Row.Version);
        response.Headers.ETag = tag;
        response.Headers.CacheControl = "private, no-cache";
        if (HttpMethods.IsGet(httpContext.Request.Method) && httpContext.Request.Headers.IfNoneMatch.ToString() == tag)
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return Task.CompletedTask;
        }

        if (Location is not null)
            response.Headers.Location = Location;
        response.StatusCode = Location is null ? StatusCodes.Status200OK : StatusCodes.Status201Created;
        response.ContentType = Json.ContentType;
        return response.Body.WriteAsync(Json.Bytes(writer => ResourceJson.Write(writer, Kind, Row)), httpContext.RequestAborted).AsTask();
    }
}
