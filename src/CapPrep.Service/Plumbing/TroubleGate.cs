using System.Diagnostics;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CapPrep.Service.Plumbing;

/// <summary>
/// The last word on every answer: an exception becomes a problem with an id that stands in the log too, and a
/// status that the framework set without a body becomes the problem that belongs to it.
/// </summary>
internal sealed partial class TroubleGate(ILogger<TroubleGate> log) : IMiddleware
{
    private const int SqliteFull = 13;
    private const int DiskFull = 28;

    public async Task InvokeAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            return;
        }
        catch (Exception fault) when (!context.Response.HasStarted)
        {
            await Refuse(context, OfException(context, fault));
            return;
        }

        if (OfStatus(context) is { } refusal)
            await Refuse(context, refusal);
    }

    private static Task Refuse(HttpContext context, Refusal refusal)
    {
        context.Response.Headers.Remove("Content-Length");
        return refusal.ExecuteAsync(context);
    }

    private Refusal OfException(HttpContext context, Exception fault)
    {
        if (fault is BadHttpRequestException bad)
            return OfBadRequest(context, bad);
        if (IsDiskFull(fault))
            return new Refusal(Problems.StorageFull, "The disk of the service is full.");
        if (IsDatabaseAway(fault))
        {
            DatabaseAway(log, fault);
            return new Refusal(Problems.DatabaseAway, "The database does not answer.") { RetryAfterSeconds = 5 };
        }

        var id = Activity.Current?.TraceId.ToString() ?? context.TraceIdentifier;
        OurFault(log, fault, id);
        return new Refusal(Problems.OurFault, $"The fault is logged under {id}.");
    }

    private static Refusal OfBadRequest(HttpContext context, BadHttpRequestException bad)
    {
        if (bad.StatusCode != StatusCodes.Status413PayloadTooLarge)
            return new Refusal(Problems.RequestMalformed, "The request broke off or is not HTTP as this service reads it.");
        var limit = context.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize;
        return new Refusal(Problems.BodyTooLarge, $"This address takes at most {limit} bytes.");
    }

    private static Refusal? OfStatus(HttpContext context)
    {
        var response = context.Response;
        if (response.HasStarted || response.ContentLength > 0 || response.ContentType is not null)
            return null;
        return response.StatusCode switch
        {
            StatusCodes.Status400BadRequest => new Refusal(Problems.RequestMalformed, "The request is not of the form this address reads."),
            StatusCodes.Status404NotFound => new Refusal(Problems.NotFound, "There is nothing at this address."),
            StatusCodes.Status405MethodNotAllowed => new Refusal(Problems.MethodNotAllowed, $"This address takes {response.Headers.Allow}, not {context.Request.Method}."),
            StatusCodes.Status406NotAcceptable => new Refusal(Problems.NotAcceptable, "None of the accepted types can be given."),
            StatusCodes.Status413PayloadTooLarge => new Refusal(Problems.BodyTooLarge, "The request is larger than this address takes."),
            StatusCodes.Status415UnsupportedMediaType => new Refusal(Problems.MediaTypeUnknown, "This content type is not read here."),
            _ => null,
        };
    }

    private static bool IsDiskFull(Exception fault) => fault switch
    {
        SqliteException sqlite => sqlite.SqliteErrorCode == SqliteFull,
        PostgresException postgres => postgres.SqlState == PostgresErrorCodes.DiskFull,
        IOException io => (io.HResult & 0xFFFF) == DiskFull,
        DbUpdateException { InnerException: { } inner } => IsDiskFull(inner),
        _ => false,
    };

    private static bool IsDatabaseAway(Exception fault) => fault switch
    {
        PostgresException postgres => postgres.IsTransient || postgres.SqlState.StartsWith("57P", StringComparison.Ordinal),
        NpgsqlException => true,
        DbUpdateException { InnerException: { } inner } => IsDatabaseAway(inner),
        InvalidOperationException { InnerException: NpgsqlException inner } => IsDatabaseAway(inner),
        _ => false,
    };

    [LoggerMessage(1, LogLevel.Error, "Our fault {ErrorId}")]
    private static partial void OurFault(ILogger log, Exception fault, string errorId);

    [LoggerMessage(2, LogLevel.Warning, "The database does not answer")]
    private static partial void DatabaseAway(ILogger log, Exception fault);
}
