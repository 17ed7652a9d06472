/* stead-months-repo.h - what the farm gave and took, month by month, and the rows of
 * hours and of the store room as they stand: for workbooks and summaries.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  int     year, month;
  gint64  eggs;          /* collected */
  double  fish_kg;       /* harvested, live weight where it was taken */
  double  crop_kg;       /* picked, of what is kept by weight */
  double  jars;          /* pieces that the kitchen made */
  gint64  in_cents;      /* money in, without transfers */
  gint64  out_cents;     /* money out, 0 or more */
  double  minutes;       /* worked */
} SteadMonth;

typedef struct
{
  SteadDay  day;
  gint64    person_id;
  char     *name;        /* of the person */
  char     *role;        /* "student", "advisor", "helper" */
  char     *duty;
  double    minutes;
  gboolean  paid;
  gboolean  late;        /* entered more than a week after the day */
  gboolean  checked;
} SteadHoursRow;

typedef struct
{
  char     *item, *code, *unit;
  SteadDay  day, best_by;   /* STEAD_DAY_NONE: none */
  double    base;
  gint64    cents;
} SteadStockRow;

typedef struct
{
  gint64   id;
  char    *name, *role;
  int      class_year;   /* 0: none */
  SteadDay left_on;      /* STEAD_DAY_NONE: still here */
  double   minutes;
} SteadPersonRow;

void stead_hours_row_free  (SteadHoursRow *row);
void stead_stock_row_free  (SteadStockRow *row);
void stead_person_row_free (SteadPersonRow *row);

/* Each: (transfer full), %NULL only with @error.  Months without anything are in it, too,
 * from the month of @from to that of @to. */
GPtrArray *stead_months_repo_list   (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Oldest first; a row that another one corrects is left out. */
GPtrArray *stead_months_repo_hours  (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Lots that hold something, by item and day. */
GPtrArray *stead_months_repo_stock  (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Everybody, by id, with the hours from @from to @to. */
GPtrArray *stead_months_repo_people (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
