/** Questions to be met before anything is told: at 40 first sights a share is known to about 15 points either way. */
export const neededQuestions = 40;
