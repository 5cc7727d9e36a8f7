# The server alone: PostgreSQL runs beside it (docker-compose.yml). Build: docker build -t rungwise .

FROM node:20-slim AS packages
WORKDIR /app
COPY package.json package-lock.json ./
# Not --omit=optional: the password hash comes as an optional package for each system, too.
RUN npm ci --omit=dev --ignore-scripts --no-audit --no-fund

FROM packages AS program
COPY . .
RUN node scripts/build.mjs

FROM node:20-slim
ENV NODE_ENV=production HOST=0.0.0.0 PORT=3000 RUNGWISE_DATA=/data RUNGWISE_BACKUPS=/backups
WORKDIR /app
COPY --from=program /app ./
# A volume laid over these takes its owner from the image. Nothing else of the container is written to.
RUN mkdir /data /backups && chown node:node /data /backups
USER node
EXPOSE 3000
VOLUME ["/data", "/backups"]
HEALTHCHECK --interval=10s --timeout=5s --start-period=20s --retries=3 \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PORT}/health`).then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
# Run with an init (docker run --init): it reaps what the server leaves behind and passes signals on.
CMD ["node", "scripts/start.mjs"]
