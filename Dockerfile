# One image for every role. Build on the SDK, run on the runtime without a shell, as a user without rights.
FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build
WORKDIR /source
COPY global.json Directory.Build.props Directory.Packages.props CapPrep.sln .editorconfig ./
COPY src ./src
COPY openapi ./openapi
RUN dotnet publish src/CapPrep.Service/CapPrep.Service.csproj -c Release -o /app && mkdir /data

FROM mcr.microsoft.com/dotnet/aspnet:10.0-noble-chiseled
LABEL org.opencontainers.image.title="CapPrep" \
      org.opencontainers.image.licenses="MIT"
COPY --from=build /app /app
COPY LICENSE /app/LICENSE
COPY --from=build --chown=1654:1654 /data /data
# Not ASPNETCORE_URLS: appsettings.json would win over it.
ENV URLS=http://0.0.0.0:5080 \
    MALLOC_ARENA_MAX=2 \
    MALLOC_TRIM_THRESHOLD_=131072 \
    CapPrep__DataFolder=/data \
    DOTNET_EnableDiagnostics=0
USER 1654
WORKDIR /data
VOLUME ["/data"]
EXPOSE 5080
HEALTHCHECK --interval=10s --timeout=6s --start-period=20s CMD ["/app/capprep", "health"]
ENTRYPOINT ["/app/capprep"]
CMD ["serve"]
