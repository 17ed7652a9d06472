/* stead-farm-repo.h - the farm's settings and its people. */
#pragma once

#include "core/stead-quantity.h"
#include "core/stead-stock-cost.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  char            *name;
  SteadUnitSystem  units;
  char            *currency;            /* ISO 4217 */
  double           elevation_m;
  int              school_year_month;   /* 1 to 12, default 8 */
  int              school_year_mday;    /* default 1 */
  gint64           labor_cents_hour;    /* rate at which unpaid work is shown; 0: not shown */
  char            *address;             /* (nullable): place of business, for labels */
  char            *phone;               /* (nullable) */
  SteadStockMethod stock_method;        /* read only; see stead_farm_repo_set_stock_method() */
} SteadFarm;

void stead_farm_free (SteadFarm *farm);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFarm, stead_farm_free)

SteadFarm *stead_farm_repo_get (SteadStore  *store,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_farm_repo_set (SteadStore      *store,
                                const SteadFarm *farm,
                                GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_farm_repo_set_stock_method:
 * @method: %STEAD_STOCK_FIFO or %STEAD_STOCK_AVERAGE_MOVING
 *
 * Costs what went out of the store room on every open day anew.  Closed days
 * stay.  Refused when their averages left lots without a cost of their own.
 */
gboolean   stead_farm_repo_set_stock_method (SteadStore        *store,
                                             SteadStockMethod   method,
                                             GError           **error) G_GNUC_WARN_UNUSED_RESULT;

typedef enum
{
  STEAD_PERSON_STUDENT,
  STEAD_PERSON_ADVISOR,
  STEAD_PERSON_HELPER,
} SteadPersonRole;

typedef struct
{
  gint64           id;          /* 0: not saved yet */
  char            *name;
  SteadPersonRole  role;
  int              class_year;  /* 0: none */
  SteadDay         left_on;     /* STEAD_DAY_NONE: still here */
} SteadPerson;

void stead_person_free (SteadPerson *person);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPerson, stead_person_free)

/* Lists: (transfer full), by name, empty if none; NULL only with @error.
 * Saving: an id of 0 inserts and fills in the id; names are unique, not empty. */
GPtrArray *stead_person_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_person_repo_save   (SteadStore *store, SteadPerson *person, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Replaces the person's name by the role ("Student 4"), in every step of undo
 * too (they are dropped), and keeps every sum. */
gboolean   stead_person_repo_forget (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
