/* stead-check-log-private.h - what the logs of checks share with what is read without a list. */
#pragma once

#include "paper/stead-paper-private.h"

G_BEGIN_DECLS

#define STEAD_LOG_CELLS 6

/* A row of a log, that is put in its place by its time. */
typedef struct
{
  gint64  at;
  char   *cells[STEAD_LOG_CELLS];
} SteadLogRow;

/* A log is begun: its days, its head. */
typedef struct
{
  SteadStore *store;
  SteadPages *pages;
  SteadDay    from, to;
  GPtrArray  *rows;     /* of SteadLogRow */
} SteadCheckLog;

/* @cells: STEAD_LOG_CELLS texts, each (nullable) */
void     stead_check_log_add         (SteadCheckLog *log, gint64 at, const char * const *cells);

/* At the end of the log: each cooler that was read, a row for each day. */
gboolean stead_check_log_add_coolers (SteadCheckLog *log, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A row for each time that a cooler was too warm. */
gboolean stead_check_log_add_warm    (SteadCheckLog *log, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
