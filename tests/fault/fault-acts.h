/* fault-acts.h - what a farm can be asked to do, each to be broken off anywhere. */
#pragma once

#include <time.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;
  gboolean    is_alone;  /* opens or makes the file itself: @store is NULL */
  gboolean  (*act) (SteadStore *store, const char *path, GError **error);
} FaultAct;

extern const FaultAct fault_acts[];
extern const gsize    fault_n_acts;

/* The farm at @path as it is on any test day; no dated copy is made by the next change. */
SteadStore *fault_open      (const char *path);

/* Reads as a window would, from a farm that may be damaged: a list may fail. */
void        fault_read_all  (SteadStore *store);

/* Whatever a file holds, no look at it takes longer, in seconds of the processor. */
#ifdef __SANITIZE_ADDRESS__
#define FAULT_LONGEST_S 20.0
#else
#define FAULT_LONGEST_S 2.0
#endif

/**
 * fault_took:
 * @start: of clock(), before @what
 * @inout_worst_s: (nullable): the longest so far
 *
 * Fails if @what took longer than %FAULT_LONGEST_S.
 */
void        fault_took      (const char *what,
                             clock_t     start,
                             double     *inout_worst_s);

/* An act, and the facts before and after it, undisturbed. */
typedef struct
{
  const FaultAct *act;
  GBytes         *base;
  char           *before;
  char           *after;
} FaultPlan;

FaultPlan  *fault_plan_new  (const FaultAct *act);
void        fault_plan_free (FaultPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FaultPlan, fault_plan_free)

/**
 * fault_round:
 * @arm: makes the n-th call fail
 * @disarm: ends that; returns whether any call failed
 *
 * Runs the act on a fresh copy and checks that it was done wholly or not at
 * all: on the same connection, after opening again, and by --verify.
 *
 * Returns: whether anything failed; if not, there is no n-th call
 */
gboolean    fault_round     (const FaultPlan *plan,
                             void           (*arm) (int n),
                             gboolean       (*disarm) (void),
                             int              n);

/**
 * fault_power_round:
 * @cut: makes the power go at the n-th moment; 0: right after the act
 * @lose: leaves the disk as that leaves it; returns whether the power went before
 *
 * The same for a power cut: the program ends with the power, and the farm is
 * opened again.  What the act said was kept is there.
 */
gboolean    fault_power_round (const FaultPlan *plan,
                               void           (*cut) (int n),
                               gboolean       (*lose) (void),
                               int              n);

G_END_DECLS
