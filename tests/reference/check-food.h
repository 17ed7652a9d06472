/* check-food.h - what the areas of food safety share: the shipped limits, and
 * temperatures in either degree. */
#pragma once

#include "check.h"

#include "core/stead-limit.h"

G_BEGIN_DECLS

/* The shipped tables, for the edition that the row asks for. */
const SteadLimitTable *check_limits (CheckRow *row);

/* The input's word, one of the NULL-terminated @words; words[@fallback] if it is
 * not there, which is an error for a fallback below 0. */
const char *check_one_of (CheckRow           *row,
                          const char         *name,
                          const char * const *words,
                          int                 fallback);
gboolean check_yes (CheckRow   *row,
                    const char *name,
                    int         fallback);

/* NAME_F or NAME_C, in °F; @name is without the degree. */
gboolean check_has_temp (CheckRow   *row,
                         const char *name);
double check_temp (CheckRow   *row,
                   const char *name);
double check_temp_or (CheckRow   *row,
                      const char *name,
                      double      fallback);
double check_celsius (double temp_f);

/* An answer in °C for an ask in °F, and the two entries of a table of asks. */
#define CHECK_IN_CELSIUS(func) \
  static double func##_c (CheckRow *row) { return check_celsius (func (row)); }
#define CHECK_TEMP_ASK(name, func) { name, "F", func }, { name, "C", func##_c }

/* The row of the tables; NULL with "none" noted as the answer. */
const SteadLimit *check_find (CheckRow             *row,
                              const char           *process,
                              const char           *subject,
                              const char           *measure,
                              const SteadLimitFact *facts);
/* Its value in @unit, and its word as the answer. */
double check_find_in (CheckRow             *row,
                      const char           *process,
                      const char           *subject,
                      const char           *measure,
                      const SteadLimitFact *facts,
                      const char           *unit);
double check_find_word (CheckRow             *row,
                        const char           *process,
                        const char           *subject,
                        const char           *measure,
                        const SteadLimitFact *facts);

/* A day as yyyy-mm-dd. */
gint32 check_day (CheckRow   *row,
                  const char *name);
gint32 check_day_of (CheckRow   *row,
                     const char *name,
                     const char *text);
double check_answer_day (CheckRow *row,
                         gint32    day);

G_END_DECLS
