// Tells the program's state by an attribute of <html> in the page that Trunk builds, as the packaged pages do.
export default function initializer() {
  const root = document.documentElement;
  return {
    onStart: () => { root.dataset.state = "starting"; },
    onSuccess: () => { setTimeout(() => { root.dataset.state = "running"; }); },
    onFailure: (error) => {
      root.dataset.state = "failed";
      console.error(error);
    },
  };
}
