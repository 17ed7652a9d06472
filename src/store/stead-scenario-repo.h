/* stead-scenario-repo.h - what is tried out on a product: named assumptions, and what
 * was sold at which price.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/* One assumption of a scenario. */
typedef struct
{
  char   *knob;    /* "price", "feed": the answer layer knows them */
  double  value;   /* 0 or more */
} SteadScenarioValue;

typedef struct
{
  char      *name;    /* unique for its product, not empty: "Feed gets dear" */
  GPtrArray *values;  /* of SteadScenarioValue; one at least, by knob */
} SteadScenario;

SteadScenario *stead_scenario_new  (const char    *name) G_GNUC_WARN_UNUSED_RESULT;
void           stead_scenario_free (SteadScenario *scenario);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadScenario, stead_scenario_free)

/* Sets one assumption, instead of the one of the same knob. */
void   stead_scenario_set (SteadScenario *scenario,
                           const char    *knob,
                           double         value);
/* The assumption about @knob; @none if the scenario has none. */
double stead_scenario_get (const SteadScenario *scenario,
                           const char          *knob,
                           double               none);

/* (transfer full) (element-type SteadScenario): by name */
GPtrArray *stead_scenario_repo_list   (SteadStore  *store,
                                       gint64       product_id,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;
/* Instead of a scenario of the same name. */
gboolean   stead_scenario_repo_save   (SteadStore           *store,
                                       gint64                product_id,
                                       const SteadScenario  *scenario,
                                       GError              **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused: no such scenario, a name that another one has. */
gboolean   stead_scenario_repo_rename (SteadStore  *store,
                                       gint64       product_id,
                                       const char  *name,
                                       const char  *new_name,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_scenario_repo_delete (SteadStore  *store,
                                       gint64       product_id,
                                       const char  *name,
                                       GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* What was sold on one day at one price. */
typedef struct
{
  gint64    id;            /* 0: not saved yet, or counted on a sale day */
  SteadDay  day;
  gint64    price_cents;   /* 0 or more */
  double    units;         /* 0 or more */
  char     *note;          /* (nullable) */
  gboolean  is_counted;    /* from the tally of a sale day; such a one cannot be changed here */
} SteadPriceTrial;

void stead_price_trial_free (SteadPriceTrial *trial);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPriceTrial, stead_price_trial_free)

/* (transfer full) (element-type SteadPriceTrial): by day; those entered, and those of the sale
 * days that are closed and sold at one price all day */
GPtrArray *stead_price_trial_repo_list   (SteadStore  *store,
                                          gint64       product_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_price_trial_repo_add    (SteadStore       *store,
                                          gint64            product_id,
                                          SteadPriceTrial  *trial,
                                          GError          **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_price_trial_repo_delete (SteadStore  *store,
                                          gint64       id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
